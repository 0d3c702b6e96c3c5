import prettier from 'eslint-config-prettier';
import vue from 'eslint-plugin-vue';
import globals from 'globals';
import tseslint from 'typescript-eslint';

const sourceSize = {
  'max-lines': ['error', { max: 300, skipBlankLines: true, skipComments: true }],
  'max-lines-per-function': ['error', { max: 60, skipBlankLines: true, skipComments: true }],
};

const outsideWorld = [
  'process',
  'performance',
  'crypto',
  'fetch',
  'window',
  'document',
  'navigator',
  'localStorage',
  'setTimeout',
  'setInterval',
  'console',
];

// One apostrophe on screen and paper. Vue has a rule of its own for the text of its templates.
const STRAIGHT = "/[a-z]'(s|t|re|ll|ve)\\b/";
const oneApostrophe = [`Literal[value=${STRAIGHT}]`, `TemplateElement[value.raw=${STRAIGHT}]`].map(
  (selector) => ({ selector, message: 'Text that is shown has ’ as its apostrophe.' }),
);

export default tseslint.config(
  { ignores: ['out/', 'dist/', 'node_modules/', 'coverage/'] },
  ...tseslint.configs.recommended,
  ...vue.configs['flat/recommended'],
  {
    files: ['**/*.vue'],
    languageOptions: { parserOptions: { parser: tseslint.parser } },
  },
  {
    files: ['renderer/**'],
    languageOptions: { globals: globals.browser },
    rules: { 'vue/multi-word-component-names': 'off' },
  },
  { files: ['**/*.mjs', '*.js', '**/*.cjs'], languageOptions: { globals: globals.node } },
  {
    rules: {
      eqeqeq: ['error', 'always', { null: 'ignore' }],
      'no-console': 'off',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/no-unused-vars': [
        'error',
        { argsIgnorePattern: '^_', varsIgnorePattern: '^_', ignoreRestSiblings: true },
      ],
    },
  },
  {
    files: ['core/**/*.ts', 'electron/**/*.ts', 'templates/**/*.ts', 'renderer/**/*.ts'],
    rules: { ...sourceSize, 'no-restricted-syntax': ['error', ...oneApostrophe] },
  },
  {
    files: ['renderer/**/*.vue'],
    rules: {
      'vue/no-restricted-syntax': [
        'error',
        ...oneApostrophe,
        `:not(VElement[name=/script|style/]) > VText[value=${STRAIGHT}]`,
      ],
    },
  },
  {
    // Wording, registers and schemas are long lists, not long thoughts.
    files: ['templates/words/**', 'core/sources.ts', 'electron/service/migrations/**'],
    rules: { 'max-lines': 'off' },
  },
  {
    // Core is handed the day and every number: neither clock nor chance nor the outside world.
    files: ['core/**/*.ts'],
    rules: {
      'no-restricted-globals': ['error', 'Date', ...outsideWorld],
      'no-restricted-properties': ['error', { object: 'Math', property: 'random' }],
    },
  },
  {
    // Calendar arithmetic may use Date on given numbers, but not ask it for the time.
    files: ['core/day.ts'],
    rules: {
      'no-restricted-globals': ['error', ...outsideWorld],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random' },
        { object: 'Date', property: 'now' },
      ],
      'no-restricted-syntax': [
        'error',
        ...oneApostrophe,
        {
          selector: "NewExpression[callee.name='Date'][arguments.length=0]",
          message: 'Core gets the day as an argument.',
        },
        {
          selector: "CallExpression[callee.name='Date']",
          message: 'Core gets the day as an argument.',
        },
      ],
    },
  },
  prettier,
);
