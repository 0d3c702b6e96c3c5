/** The wording of the strength sheet. */
export const strengthEn = {
  kind: 'Strength sheet',
  title: 'Strength and balance for {dog}',
  intro:
    'On {days} days a week, never two in a row. Walk for five minutes first. Slow and straight counts more than many.',
  nothing: 'Nothing is chosen yet. Ask at the next visit before you begin.',
  week: 'Week {week}',
  dose: '{sets} × {repeats} {unit}',
  units: { times: 'times', steps: 'steps', seconds: 'seconds', minutes: 'minutes' },
  next: 'After two clean weeks: {harder}',
  planLine: 'strength on 2 to 3 days',
  stopTitle: 'Stop and call us',
  stop: [
    'if {dog} is lame, cries, shakes or will not do it',
    'if {dog} is stiff or tired the next day',
    'if a back or a leg looks weaker than before',
  ],
  clean: 'A clean week: all done, and {dog} moves as usual the next day. Tick a box for each day.',
  stops: {
    leans: 'Stop when it leans, sits crooked or stiffens.',
    trembles: 'Stop when a leg shakes or it steps off.',
    stride: 'Stop when a step is short or a paw drags.',
  },
  exercises: {
    'sit-to-stand': {
      name: 'Sit to stand',
      how: 'Sit straight, then up with a treat held level.',
      harder: 'a third set, then with the front paws on a low step',
    },
    'down-to-stand': {
      name: 'Down to stand',
      how: 'Lie straight, then up without a step.',
      harder: 'a third set, then from a soft mat',
    },
    'backing-up': {
      name: 'Backing up',
      how: 'Back in a straight line, along a wall.',
      harder: 'two steps more, then up a gentle slope',
    },
    'figures-of-eight': {
      name: 'Figures of eight',
      how: 'Walk round two cones, three paces apart.',
      harder: 'a third set, then cones closer together',
    },
    circles: {
      name: 'Circles both ways',
      how: 'Walk a wide circle around you, left and right.',
      harder: 'a third set, then a circle one step smaller',
    },
    'ground-poles': {
      name: 'Poles on the ground',
      how: 'Walk slowly over five poles, a step apart.',
      harder: 'a third set, then two poles more',
    },
    'slope-walking': {
      name: 'Walk a slope',
      how: 'Walk up and down a gentle slope.',
      harder: 'a minute more, then a steeper slope',
    },
    'cushion-weight-shifts': {
      name: 'Weight shifts on a cushion',
      how: 'Front paws on a firm cushion. Push the hips softly to each side.',
      harder: 'ten seconds more, then a softer cushion',
    },
    'paw-lifts': {
      name: 'Paw lifts',
      how: 'On firm ground lift one paw a little. Then the next.',
      harder: 'a third set, then three seconds longer',
    },
    'three-leg-stand': {
      name: 'Three-leg stand',
      how: 'Hold one hind paw up and let the dog stand still.',
      harder: 'a third set, then three seconds longer',
    },
    'side-steps': {
      name: 'Side steps',
      how: 'Ask for steps to one side, then to the other.',
      harder: 'two steps more, then over a pole',
    },
    'play-bow': {
      name: 'Play bow',
      how: 'Front down, hips up, then stand again.',
      harder: 'a third set, then held for three seconds',
    },
  },
} as const;
