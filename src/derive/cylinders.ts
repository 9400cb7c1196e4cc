/** Force out of cylinders: the pressure their gauge shows. Pascal's law, friction left out. */
import { NM_PER_M } from './lengths.ts';

/** Area of `count` pistons of a bore, m²; bore in nm. */
export const pistonAreaM2 = (count: number, boreNm: number): number => (count * Math.PI * (boreNm / NM_PER_M) ** 2) / 4;

/** Pressure in Pa that makes a force of N out of `count` cylinders of a bore in nm: p = F / (n · π · D² / 4). */
export const gaugePa = (forceN: number, count: number, boreNm: number): number => forceN / pistonAreaM2(count, boreNm);
