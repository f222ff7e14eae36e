// Stands in for the method `scene` until the engine has it.

import type { EngineClient } from "../../engine/client";
import type { Eye, Pointed, Source, Traced } from "../../engine/types";

export type SceneMoment =
  | { kind: "traced"; letter: Pointed | null; drawn: number }
  | { kind: "carried"; at: number; progress: number }
  | { kind: "checked"; memo: Record<string, string>; cracked: Pointed[]; outcome: string };

export interface WantedScene {
  source: Source;
  frame: { width: number; height: number };
  eye: Eye | null;
  right: number;
  down: number;
  moment: SceneMoment;
  open: number | null;
}

interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

export interface DrawnScene {
  cube: string;
  link: string;
  thread: string;
  title: string;
  description: string;
  eye: Eye;
  beads: { part: number; letter: number; x: number; y: number; radius: number; said: string }[];
  parts: (Box & { part: number; name: string; open: boolean; said: string })[];
  cubeBox: Box;
}

export async function askScene(engine: EngineClient, wanted: WantedScene, traced: Traced | null): Promise<DrawnScene> {
  const { source, frame, eye, right, down, moment } = wanted;
  const looking = { eye, right, down, hidden: "no" as const };
  const drawn =
    moment.kind === "carried"
      ? await engine.ask("moment", { source, looking, at: moment.at, progress: moment.progress })
      : await engine.ask("picture", { source, looking, letter: moment.kind === "traced" ? moment.letter : null });
  const wide = frame.width > 1.3 * frame.height;
  const cubeBox = wide
    ? { x: 0, y: 0, width: frame.width * 0.42, height: frame.height }
    : { x: 0, y: 0, width: frame.width, height: frame.height * 0.55 };
  const { x, y, width, height } = cubeBox;
  const cube = drawn.svg.replace("<svg ", `<svg x="${x}" y="${y}" `).replace(/ width="[^"]*"/, ` width="${width}"`).replace(/ height="[^"]*"/, ` height="${height}"`);
  const beads: DrawnScene["beads"] = [];
  let thread = "";
  const left = wide ? frame.width * 0.47 : 36;
  let top = wide ? 90 : frame.height * 0.66;
  const radius = wide ? 30 : 18;
  for (const [part, of] of (traced?.parts ?? []).entries()) {
    let at = left;
    for (const letter of of.groups.flat()) {
      if (at + radius > frame.width) {
        at = left;
        top += 2.4 * radius;
      }
      beads.push({ part, letter: letter.index, x: at, y: top, radius, said: letter.said });
      thread += `<g data-bead="${part}:${letter.index}"><circle cx="${at}" cy="${top}" r="${radius}" fill="white"/><text x="${at}" y="${top + 7}" text-anchor="middle">${letter.letter}</text></g>`;
      at += 2.3 * radius;
    }
    top += 3 * radius;
  }
  return { cube, link: "", thread, title: "", description: "", eye: drawn.eye, beads, parts: [], cubeBox };
}
