import prettier from 'eslint-config-prettier';
import vue from 'eslint-plugin-vue';
import globals from 'globals';
import tseslint from 'typescript-eslint';

const sourceSize = {
  'max-lines': ['error', { max: 300, skipBlankLines: true, skipComments: true }],
  'max-lines-per-function': ['error', { max: 60, skipBlankLines: true, skipComments: true }],
};

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
    rules: sourceSize,
  },
  {
    // Wording, registers and schemas are long lists, not long thoughts.
    files: ['templates/words/**', 'core/sources.ts', 'electron/service/migrations/**'],
    rules: { 'max-lines': 'off' },
  },
  {
    files: ['core/**/*.ts'],
    ignores: ['core/day.ts'],
    rules: {
      'no-restricted-globals': ['error', 'Date', 'process', 'fetch', 'window', 'setTimeout'],
      'no-restricted-properties': ['error', { object: 'Math', property: 'random' }],
    },
  },
  prettier,
);
