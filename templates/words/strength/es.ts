import type { OwnerWords } from '../words.ts';

/** El texto de la hoja de fuerza. */
export const strengthEs: OwnerWords['strength'] = {
  kind: 'Hoja de fuerza',
  title: 'Fuerza y equilibrio para {dog}',
  intro:
    '{days} días a la semana, nunca dos seguidos. Antes camine cinco minutos. Lento y recto vale más que mucho.',
  nothing: 'Aún no hay nada elegido. Pregunte en la próxima visita antes de empezar.',
  week: 'Semana {week}',
  dose: '{sets} × {repeats} {unit}',
  units: { times: 'veces', steps: 'pasos', seconds: 'segundos', minutes: 'minutos' },
  next: 'Tras dos semanas limpias: {harder}',
  planLine: 'fuerza de 2 a 3 días',
  stopTitle: 'Pare y llámenos',
  stop: [
    'si {dog} cojea, se queja, tiembla o no quiere',
    'si {dog} está rígido o cansado al día siguiente',
    'si la espalda o una pata parece más débil que antes',
  ],
  clean:
    'Una semana limpia: todo hecho, y {dog} se mueve como siempre al día siguiente. Marque una casilla por día.',
  stops: {
    leans: 'Pare si el perro se apoya, se sienta torcido o se pone rígido.',
    trembles: 'Pare si una pata tiembla o el perro se baja.',
    stride: 'Pare si un paso es corto o una pata se arrastra.',
  },
  exercises: {
    'sit-to-stand': {
      name: 'De sentado a de pie',
      how: 'Sentado recto, luego de pie con un premio a la altura de la nariz.',
      harder: 'una tercera serie, luego con las manos en un escalón bajo',
    },
    'down-to-stand': {
      name: 'De tumbado a de pie',
      how: 'Tumbado recto, luego de pie sin dar un paso.',
      harder: 'una tercera serie, luego sobre una alfombra blanda',
    },
    'backing-up': {
      name: 'Ir hacia atrás',
      how: 'Hacia atrás en línea recta, junto a una pared.',
      harder: 'dos pasos más, luego en cuesta suave',
    },
    'figures-of-eight': {
      name: 'Ochos',
      how: 'Al paso alrededor de dos conos, a tres pasos uno de otro.',
      harder: 'una tercera serie, luego con los conos más cerca',
    },
    circles: {
      name: 'Círculos a ambos lados',
      how: 'Al paso, un círculo amplio alrededor de usted, a izquierda y derecha.',
      harder: 'una tercera serie, luego un círculo un paso más pequeño',
    },
    'ground-poles': {
      name: 'Barras en el suelo',
      how: 'Pase despacio cinco barras, a un paso una de otra.',
      harder: 'una tercera serie, luego dos barras más',
    },
    'slope-walking': {
      name: 'Caminar en cuesta',
      how: 'Suba y baje una cuesta suave al paso.',
      harder: 'un minuto más, luego una cuesta mayor',
    },
    'cushion-weight-shifts': {
      name: 'Cambios de peso en un cojín',
      how: 'Manos sobre un cojín firme. Empuje la cadera con suavidad a cada lado.',
      harder: 'diez segundos más, luego un cojín más blando',
    },
    'paw-lifts': {
      name: 'Levantar una pata',
      how: 'Sobre suelo firme, levante un poco una pata. Luego la siguiente.',
      harder: 'una tercera serie, luego tres segundos más',
    },
    'three-leg-stand': {
      name: 'De pie sobre tres patas',
      how: 'Sujete una pata trasera; el perro se queda quieto.',
      harder: 'una tercera serie, luego tres segundos más',
    },
    'side-steps': {
      name: 'Pasos de lado',
      how: 'Pasos hacia un lado, luego hacia el otro.',
      harder: 'dos pasos más, luego por encima de una barra',
    },
    'play-bow': {
      name: 'Reverencia',
      how: 'Delante abajo, cadera arriba, luego de pie.',
      harder: 'una tercera serie, luego tres segundos así',
    },
  },
};
