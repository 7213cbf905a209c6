import { darkTheme, lightTheme, type FigureTheme } from '../../shared-lib/figure/theme.ts';

export type AppearanceChoice = 'system' | 'light' | 'dark';

/** Light or dark, by the system unless the person chose. */
export class Appearance {
  #systemDark = $state(false);
  #choice = $state<AppearanceChoice>('system');
  #fontsReady = $state(false);

  constructor() {
    const system = matchMedia('(prefers-color-scheme: dark)');
    this.#systemDark = system.matches;
    system.addEventListener('change', () => (this.#systemDark = system.matches));
    void document.fonts.ready.then(() => (this.#fontsReady = true));
    const kept = localStorage.getItem('appearance');
    if (kept === 'light' || kept === 'dark') this.choose(kept);
  }

  get choice(): AppearanceChoice {
    return this.#choice;
  }

  get dark(): boolean {
    return this.#choice === 'system' ? this.#systemDark : this.#choice === 'dark';
  }

  /** A canvas drawn before has the wrong letters and must be drawn again. */
  get fontsReady(): boolean {
    return this.#fontsReady;
  }

  /** Colours for charts and strips. */
  get figures(): FigureTheme {
    return this.dark ? darkTheme : lightTheme;
  }

  choose(choice: AppearanceChoice): void {
    this.#choice = choice;
    localStorage.setItem('appearance', choice);
    if (choice === 'system') delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = choice;
  }
}
