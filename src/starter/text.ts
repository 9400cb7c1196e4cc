/** The text of a first spec: what an engineer reads first, so every block says what it is for. */
import type { Choices } from './starter.ts';

export function specText(c: Choices): string {
  const title = c.id.charAt(0).toUpperCase() + c.id.slice(1).replace(/-/g, ' ');
  const drill = c.drillMm(c.drill);
  return `# yaml-language-server: $schema=schemas/model.schema.json
# ${title}: a first spec. It passes as it stands; change it line by line and run: platen check ${c.id}
model: ${c.id}
title: ${title}
line: ${c.line}
revision: A
units: mm

# What it is cut from. The species must be the stock's.
timber:
${c.parts.map(({ part, species, name }) => `  ${part}: { species: ${species}, ${pieces(part)}, sawn: flat, stock: ${name} }`).join('\n')}

# Thickness after each stage, with limits. What a part is before it is sized follows from the line's allowances.
stages:
${c.parts.map(({ part, thickness }) => `  ${part}: { sized: ${thickness} }`).join('\n')}
  body:
    back-faced: ${c.faced}
    machined: { face: ${c.machined} }
    white: { face: ${c.white} }

# Seen from the top, neck up; origin where the centreline meets the bridge line; SVG path syntax, millimetres.
outline:
  of: machined
  view: from-top
  path: M -90 -190 L 90 -190 A 60 60 0 0 1 150 -130 L 150 -100 C 150 -40 125 -30 125 20 C 125 70 140 90 140 147.7 A 80 80 0 0 1 60 227.7 L -60 227.7 A 80 80 0 0 1 -140 147.7 C -140 90 -125 70 -125 20 C -125 -30 -150 -40 -150 -100 L -150 -130 A 60 60 0 0 1 -90 -190 Z

# flat, bevelled or arched.
carve: { kind: flat }

# First the back up, pinned through the drilled holes and faced; then the top up, on that back and located on holes of the first.
# Clamps hold both, clear of the cutters: vacuum, once a fixture has zones that seal under this very body.
setups:
  back:
    up: back
    rests-on: ${c.capFace}
    pins: ${c.pattern}
    hold: clamps
    z-zero: fixture
    faces: back
    machine: ${c.machine}
    fixture: ${c.fixtures.back}
    program: '${c.programs.back}'
    cutters: { face: ${c.facing}, perimeter: ${c.perimeter} }
  top:
    up: top
    rests-on: back-face
    locates-on: [tooling-hole-a, tooling-hole-b]
    hold: clamps
    z-zero: fixture
    flip: lengthwise
    machine: ${c.machine}
    fixture: ${c.fixtures.top}
    program: '${c.programs.top}'
    cutters: { perimeter: ${c.perimeter} }

# A depth below a surface (from, depth), or the wood left (floor).
cavities:
  neck-pocket:
    setup: top
    shape: { kind: rectangle, length: 76, width: 56 }
    at: { x: 0, y: 200 }
    from: machined-top
    depth: ${c.pocketDepth} ±0.2
    corner: ${c.corner}
    cutter: ${c.pocket}
    purpose: neck
  controls:
    setup: back
    shape: { kind: rectangle, length: 56, width: 60 }
    at: { x: 92, y: -62 }
    floor: ${c.floor} ±0.4
    corner: ${c.corner}
    cutter: ${c.controls}
    purpose: controls

# Two holes far apart, cut from the back, that locate the body for its top. Their limits say how loose they sit on its pins.
holes:
  tooling-hole-a:
    setup: back
    at: { x: 0, y: 110 }
    diameter: ${drill} +0.05/-0
    from: back-face
    depth: 12.0 ±0.5
    drill: ${c.drill}
    use: location
  tooling-hole-b:
    setup: back
    at: { x: 44, y: -30 }
    diameter: ${drill} +0.05/-0
    from: back-face
    depth: 12.0 ±0.5
    drill: ${c.drill}
    use: location

# Plates over what is not to be seen: controls and tooling holes in the back, and in the top the holes of the drilling jig.
covers:
  plate-a: { face: back, shape: { kind: circle, diameter: 30 }, at: { x: 0, y: 110 } }
  plate-b: { face: back, shape: { kind: circle, diameter: 22 }, at: { x: 44, y: -30 } }
  controls-cover: { face: back, shape: { kind: rectangle, length: 66, width: 70 }, at: { x: 92, y: -62 } }
${c.jigHoles.map(({ name, x, y, size }) => `  over-${name}: { face: top, shape: { kind: circle, diameter: ${size} }, at: { x: ${x}, y: ${y} } }`).join('\n')}

# The 18th fret lies where the body ends: 227.7 from the bridge line.
neck: { kind: bolt-on, scale: 644, frets: 22, joint-fret: 18, pocket: neck-pocket }
bridge: { kind: plate with six screws, compensation: 2.5, travel: 8 }
# The jig's holes are drilled from the top, so deep and not through.
location: { jig: ${c.jig}, depth: 12.0 ±1.0 }

# For each finish the grades allowed under it: too good is refused as well as too poor.
finishes: [${c.finish}]
grades:
  ${c.finish}: { ${c.band.map(({ scale, steps }) => `${scale}: [${steps.join(', ')}]`).join(', ')} }
`;
}

const pieces = (part: string): string => (part === 'cap' ? 'halves: 2, match: book' : 'pieces: 2');
