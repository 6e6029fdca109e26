import js from '@eslint/js';
import tseslint from 'typescript-eslint';

export default tseslint.config(
  js.configs.recommended,
  ...tseslint.configs.strictTypeChecked,
  {
    languageOptions: {
      parserOptions: {
        project: ['tests/tsconfig.json'],
        tsconfigRootDir: new URL('..', import.meta.url).pathname,
      },
    },
    rules: {
      '@typescript-eslint/switch-exhaustiveness-check': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      'max-params': ['error', 4],
      // Numbers in messages are plain here: figures of a cook are Decimals, and those do not pass.
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      // A name that is taken out so that the rest is without it.
      '@typescript-eslint/no-unused-vars': ['error', { ignoreRestSiblings: true }],
      // `return step(x);` as the last thing of a function that gives nothing either.
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreVoidReturningFunctions: true }],
    },
  },
  // Plain JavaScript, outside of the TypeScript project: what starts the program before anything is compiled.
  {
    files: ['**/*.js'],
    ...tseslint.configs.disableTypeChecked,
    languageOptions: {
      globals: { process: 'readonly', URL: 'readonly', WebAssembly: 'readonly' },
      parserOptions: { project: null },
    },
  },
  { ignores: ['tests/eslint.config.js'] },
);
