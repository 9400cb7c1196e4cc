import type { System } from './unit.ts';
import { unitById } from './unit.ts';

/** The unit of the other system in which a value is repeated beside its own. Units absent here are never repeated. */
const SECOND: Readonly<Record<string, string>> = {
  mm: 'in',
  cm: 'in',
  m: 'ft',
  µm: 'thou',
  in: 'mm',
  thou: 'mm',
  ft: 'm',
  g: 'oz',
  oz: 'g',
  kg: 'lb',
  lb: 'kg',
  N: 'lbf',
  kN: 'lbf',
  lbf: 'N',
  kPa: 'psi',
  MPa: 'psi',
  bar: 'psi',
  psi: 'kPa',
  inHg: 'kPa',
  '°C': '°F',
  '°F': '°C',
  'Δ°C': 'Δ°F',
  'Δ°F': 'Δ°C',
  'm/min': 'ft/min',
  'ft/min': 'm/min',
  'mm/min': 'in/min',
  'in/min': 'mm/min',
  'm/s': 'ft/min',
  'g/m²': 'lb/1000ft²',
  'lb/1000ft²': 'g/m²',
  'm²': 'ft²',
  'ft²': 'm²',
  'cm²': 'in²',
  'mm²': 'in²',
  'in²': 'cm²',
  'm³': 'bf',
  bf: 'm³',
  'cm³': 'in³',
  'in³': 'cm³',
  'kg/m³': 'lb/ft³',
  'lb/ft³': 'kg/m³',
  'W/cm²': 'W/in²',
  'W/in²': 'W/cm²',
};

/** 'any' for units both systems share (deg, %, rpm, times, counts). */
export function systemOf(unitId: string): System {
  return unitById(unitId).system;
}

export function secondUnit(unitId: string): string | undefined {
  return SECOND[unitById(unitId).id];
}
