import globals from 'globals';
import svelte from 'eslint-plugin-svelte';
import ts from 'typescript-eslint';

const unused = ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_', caughtErrorsIgnorePattern: '^_' }];

export default ts.config(
  { ignores: ['out/**', 'node_modules/**'] },
  ...ts.configs.recommended,
  ...ts.configs.stylistic,
  ...svelte.configs.recommended,
  {
    rules: {
      '@typescript-eslint/no-unused-vars': unused,
      '@typescript-eslint/consistent-type-imports': ['error', { disallowTypeAnnotations: false }],
      'no-restricted-syntax': [
        'error',
        { selector: 'ExportDefaultDeclaration', message: 'Named exports only: one name for one thing everywhere.' },
      ],
      eqeqeq: ['error', 'always', { null: 'ignore' }],
      'no-console': 'error',
    },
  },
  {
    files: ['build/*.config.{mjs,ts}', 'renderer/vite.config.ts'],
    rules: { 'no-restricted-syntax': 'off' },
  },
  {
    files: ['build/**/*.mjs'],
    languageOptions: { globals: globals.node },
    rules: { 'no-console': 'off' },
  },
  {
    files: ['renderer/**/*.svelte', 'renderer/**/*.svelte.ts'],
    languageOptions: { globals: globals.browser, parserOptions: { parser: ts.parser } },
  },
  {
    // shared-lib is pure: no Node, no window, no clock, no randomness that is not passed in.
    files: ['shared-lib/**/*.ts'],
    rules: {
      'no-restricted-globals': [
        'error',
        ...['process', 'Buffer', 'require', 'global', 'window', 'document', 'navigator', 'localStorage', 'fetch', 'setTimeout', 'setInterval', 'performance', 'console', 'crypto'].map(
          (name) => ({ name, message: 'shared-lib is pure; pass it in.' }),
        ),
      ],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'Pass in a seeded generator (statistics/random.ts).' },
        { object: 'Date', property: 'now', message: 'shared-lib has no clock; pass the time in.' },
      ],
    },
  },
  {
    files: ['electron/**/*.ts'],
    ignores: ['electron/shell/bridge.ts', 'electron/main.ts'],
    rules: {
      'no-restricted-syntax': [
        'error',
        { selector: 'ExportDefaultDeclaration', message: 'Named exports only: one name for one thing everywhere.' },
        { selector: "MemberExpression[object.name='ipcMain']", message: 'shell/bridge.ts is the only door to ipcMain.' },
      ],
    },
  },
);
