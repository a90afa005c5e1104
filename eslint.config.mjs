import js from '@eslint/js'
import tseslint from 'typescript-eslint'

const pure = ['src/base', 'src/facts', 'src/blueprint', 'src/engines', 'src/machine', 'src/bench'].map(
  (folder) => `${folder}/**/*.ts`,
)

export default tseslint.config(
  { ignores: ['dist', 'node_modules', 'coverage', '.tmp'] },
  js.configs.recommended,
  ...tseslint.configs.recommendedTypeChecked,
  {
    languageOptions: {
      parserOptions: {
        project: './tsconfig.json',
        tsconfigRootDir: import.meta.dirname,
      },
    },
    rules: {
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      // Async React event handlers are the normal way to start a request.
      '@typescript-eslint/no-misused-promises': ['error', { checksVoidReturn: { attributes: false } }],
      eqeqeq: 'error',
    },
  },
  {
    // Pure code gets time and random numbers as arguments, so that it runs unchanged in Node, in a browser worker and in tests.
    files: pure,
    rules: {
      'no-restricted-properties': [
        'error',
        { object: 'Date', property: 'now', message: 'Pure code takes the time as an argument.' },
        { object: 'Math', property: 'random', message: 'Pure code takes a seeded source: src/base/random.ts.' },
      ],
      'no-restricted-globals': ['error', 'window', 'document', 'process', 'fetch', 'localStorage', 'setTimeout'],
      'no-restricted-syntax': [
        'error',
        {
          selector: "NewExpression[callee.name='Date'][arguments.length=0]",
          message: 'Pure code takes the time as an argument.',
        },
      ],
    },
  },
  {
    files: ['**/*.mjs'],
    ...tseslint.configs.disableTypeChecked,
    languageOptions: {
      ...tseslint.configs.disableTypeChecked.languageOptions,
      globals: { process: 'readonly', console: 'readonly', URL: 'readonly' },
    },
  },
)
