import { MathsInputError } from '@/lib/maths/check';
import { absolutePressure, type PressureUnit } from '@/lib/maths/steam/absolute-pressure';
import { saturationPressure } from '@/lib/maths/steam/saturation-pressure';
import { saturationTemperature } from '@/lib/maths/steam/saturation-temperature';

export const topic = 'Saturation line of water and steam';

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  try {
    if (inputs.T_K !== undefined) return { p_MPa: saturationPressure(inputs.T_K as number) };
    if (inputs.p_MPa !== undefined) return boiling(inputs.p_MPa as number);
    const absolute = absolutePressure(
      inputs.gauge as number,
      inputs.unit as PressureUnit,
      inputs.atmosphere_kPa as number,
    );
    return { p_abs_MPa: absolute, ...boiling(absolute) };
  } catch (error) {
    if (error instanceof MathsInputError) return { error: error.message };
    throw error;
  }
}

function boiling(pressureMPa: number): Record<string, number> {
  const temperatureK = saturationTemperature(pressureMPa);
  return { T_K: temperatureK, T_C: temperatureK - 273.15 };
}
