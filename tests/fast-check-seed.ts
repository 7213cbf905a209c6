import fc from 'fast-check';

// The same cases on every run, so that main cannot fail by chance; the slow lane looks at new ones each time.
if (process.env.LAYDOWN_SLOW !== '1') fc.configureGlobal({ seed: 20_260_113 });
