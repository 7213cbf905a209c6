export type TestState = 'running' | 'finished' | 'outdated';
