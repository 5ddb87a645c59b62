/** Temperatures into one another, and onto the scale the seawater equations of 1978 to 1992 were fitted on. */
import { type Celsius, celsius, type Fahrenheit, fahrenheit, type Kelvin, kelvin } from "./quantity.ts";

/** 0 °C in kelvin, exact by definition. */
export const ZERO_CELSIUS_IN_KELVIN = 273.15;

export const toKelvin = (temperature: Celsius): Kelvin => kelvin(temperature + ZERO_CELSIUS_IN_KELVIN);

export const fromKelvin = (temperature: Kelvin): Celsius => celsius(temperature - ZERO_CELSIUS_IN_KELVIN);

export const fahrenheitToCelsius = (temperature: Fahrenheit): Celsius => celsius((temperature - 32) / 1.8);

export const celsiusToFahrenheit = (temperature: Celsius): Fahrenheit => fahrenheit(temperature * 1.8 + 32);

/**
 * °C of today's scale (ITS-90) as °C of 1968's (IPTS-68), between -2 and 40 °C.
 * Forgetting it costs 0.003 to 0.005 of salinity from conductivity at 20 to 30 °C.
 * @source unesco-44 as applied by the TEOS-10 libraries: t68 = 1.00024 t90
 */
export const toT68 = (temperature: Celsius): number => 1.00024 * temperature;
