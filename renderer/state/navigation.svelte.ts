import { parsePlace, placeHash, placeOfScreen, type Place, type RailScreen } from './place.ts';

/** The place in the address, so that back, forward and reload do what a browser does. */
export class Navigation {
  #place = $state.raw<Place>(parsePlace(location.hash));

  constructor() {
    addEventListener('hashchange', () => (this.#place = parsePlace(location.hash)));
  }

  get place(): Place {
    return this.#place;
  }

  go(place: Place): void {
    location.hash = placeHash(place);
    this.#place = place;
  }

  goToScreen(screen: RailScreen): void {
    this.go(placeOfScreen(screen));
  }
}
