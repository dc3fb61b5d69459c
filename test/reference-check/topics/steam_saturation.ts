import { MathsInputError } from '@/lib/maths/check';
import { absolutePressure, type PressureUnit } from '@/lib/maths/steam/absolute-pressure';
import { saturationPressure } from '@/lib/maths/steam/saturation-pressure';
import { saturationTemperature } from '@/lib/maths/steam/saturation-temperature';

export const topic = 'Saturation line of water and steam';

/** What is taken where the atmosphere is not stated (FORMULAS.md 26). */
const standardAtmosphereKPa = 101.325;

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  try {
    const temperatureK =
      inputs.T_K ?? (inputs.T_C === undefined ? undefined : toKelvin(inputs.T_C));
    if (temperatureK !== undefined) return { p_MPa: saturationPressure(temperatureK as number) };
    if (inputs.p_MPa !== undefined) return boiling(inputs.p_MPa as number);
    const absolute = absolutePressure(
      inputs.gauge as number,
      inputs.unit as PressureUnit,
      (inputs.atmosphere_kPa ?? standardAtmosphereKPa) as number,
    );
    return { p_abs_MPa: absolute, ...boiling(absolute) };
  } catch (error) {
    if (error instanceof MathsInputError) return { error: error.message };
    throw error;
  }
}

const toKelvin = (celsius: unknown) => (celsius as number) + 273.15;

function boiling(pressureMPa: number): Record<string, number> {
  const temperatureK = saturationTemperature(pressureMPa);
  return { T_K: temperatureK, T_C: temperatureK - 273.15 };
}
