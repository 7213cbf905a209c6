/** Whole seconds that go by until nothing is left. */
export class Countdown {
  #left = $state(0);
  #timer: ReturnType<typeof setInterval> | undefined;

  get left(): number {
    return this.#left;
  }

  begin(seconds: number): void {
    clearInterval(this.#timer);
    this.#left = seconds;
    if (seconds <= 0) return;
    const end = performance.now() + seconds * 1000;
    this.#timer = setInterval(() => {
      this.#left = Math.max(0, Math.ceil((end - performance.now()) / 1000));
      if (this.#left === 0) clearInterval(this.#timer);
    }, 250);
  }
}
