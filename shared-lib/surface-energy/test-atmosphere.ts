import type { Flag } from '../calculation/result.ts';

/** Standard atmosphere for films, ISO 291 and ASTM D618 (from memory): 23 ± 2 °C, 50 ± 5 % relative humidity. */
const atmosphere = { temperatureC: 23, temperatureTolerance: 2, humidityPct: 50, humidityTolerance: 5 };

/** Flags a temperature (°C) or a relative humidity (%) outside the standard atmosphere; what was not recorded is not flagged. */
export function atmosphereFlags(temperatureC: number | undefined, relativeHumidityPct: number | undefined): Flag[] {
  const flags: Flag[] = [];
  if (temperatureC !== undefined && Math.abs(temperatureC - atmosphere.temperatureC) > atmosphere.temperatureTolerance) {
    flags.push({
      code: 'temperature-outside',
      where: 'temperatureC',
      text: `${temperatureC} °C is outside 23 ± 2 °C, at which the fluids have their nominal tension and evaporation.`,
    });
  }
  if (
    relativeHumidityPct !== undefined &&
    Math.abs(relativeHumidityPct - atmosphere.humidityPct) > atmosphere.humidityTolerance
  ) {
    flags.push({
      code: 'humidity-outside',
      where: 'relativeHumidityPct',
      text: `${relativeHumidityPct} % relative humidity is outside 50 ± 5 %; the fluids take up water from moist air.`,
    });
  }
  return flags;
}
