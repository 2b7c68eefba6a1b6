// The firing dial: an engine in, a drawing out. Every kind of place has a mark of its own.
//
//   ring of degrees  the whole engine          spoke           leg; with a jacket where it is a cable
//   circle of discs  a set of like parts       bar, stroke     coil
//   arcs outside     a bank                    ring of the hub plug-in connector
//   tie outside      two neighbours            disc            cylinder
import type { Engine, FaultRow } from "@half-order/core";
import type { VNode } from "preact";
import { useMemo } from "preact/hooks";
import { Disc } from "./disc.tsx";
import {
  arc,
  CENTRE,
  coilLie,
  DIAL_BOX,
  discRadius,
  labelledAngles,
  legLine,
  pointAt,
  RADIUS,
  type Seat,
  seats,
  tie,
} from "./geometry.ts";
import { BARE, isDrawn, type Look, Mark, placeId, type Width } from "./mark.tsx";

interface Drawing {
  readonly engine: Engine;
  readonly look: Look;
  readonly seats: readonly Seat[];
  readonly disc: number;
}

/** The dial without words: say in a list beside it what it shows. */
export function Dial({ engine, look = BARE }: { engine: Engine; look?: Look }): VNode {
  const places = seats(engine.angles);
  const drawing: Drawing = { engine, look, seats: places, disc: discRadius(places) };
  return (
    <svg class="dial" viewBox={DIAL_BOX} aria-hidden="true">
      {useMemo(
        () => (
          <Scale engine={engine} />
        ),
        [engine],
      )}
      <Whole {...drawing} kind="engine" radius={RADIUS.scale} width={{ thin: 0.75, thick: 8 }} />
      <Whole {...drawing} kind="set" radius={RADIUS.pitch} width={{ thin: 0.5, thick: 7 }} />
      <Banks {...drawing} />
      <Ties {...drawing} />
      <Legs {...drawing} />
      <Hub {...drawing} />
      <Coils {...drawing} />
      {places.map(({ at }, c) => (
        <Disc
          key={engine.names[c]}
          engine={engine}
          cylinder={c}
          at={at}
          radius={drawing.disc}
          look={look}
        />
      ))}
    </svg>
  );
}

/** Keeps the room of a dial that is still to come. */
export function DialRoom(): VNode {
  return <svg class="dial" viewBox={DIAL_BOX} aria-hidden="true" />;
}

const TICK_DEG = 30;

function Scale({ engine }: Pick<Drawing, "engine">): VNode {
  const ticks = Array.from({ length: 720 / TICK_DEG }, (_, i) => i * TICK_DEG);
  return (
    <g class="scale">
      {ticks.map((angle) => {
        const from = pointAt(angle, RADIUS.scale);
        const to = pointAt(angle, RADIUS.scale + (angle % 180 === 0 ? 6 : 3));
        return <line key={angle} x1={from.x} y1={from.y} x2={to.x} y2={to.y} />;
      })}
      {labelledAngles(engine.angles).map((angle) => {
        const { x, y } = pointAt(angle, RADIUS.label);
        return (
          <text key={angle} x={x} y={y}>
            {angle}°
          </text>
        );
      })}
    </g>
  );
}

interface WholeProps extends Drawing {
  readonly kind: FaultRow["at"];
  readonly radius: number;
  readonly width: Width;
}

/** A place that is the whole engine: a full circle. */
function Whole({ look, kind, radius, width }: WholeProps): VNode {
  return (
    <Mark
      id={kind}
      look={look}
      width={width}
      draw={(className, stroke) => (
        <circle class={`${className} whole`} r={radius} stroke-width={stroke} />
      )}
    />
  );
}

function Banks({ engine, look, seats }: Drawing): VNode {
  const half = Math.min(24, 200 / engine.names.length);
  const shown = engine.banks.filter((bank) => isDrawn(placeId(engine, "bank", bank), look));
  return (
    <>
      {shown.map((bank) => (
        <Mark
          key={bank.join()}
          id={placeId(engine, "bank", bank)}
          look={look}
          width={{ thin: 2, thick: 9 }}
          draw={(className, width) => (
            <path
              class={className}
              stroke-width={width}
              d={bank.map((c) => arc(seats[c]?.angle ?? 0, half, RADIUS.scale - 6)).join("")}
            />
          )}
        />
      ))}
    </>
  );
}

function Ties({ engine, look, seats, disc }: Drawing): VNode {
  const pairs = engine.neighbours.map((pair) => ({
    pair,
    id: placeId(engine, "neighbours", pair),
  }));
  return (
    <>
      {pairs
        .filter(({ id }) => isDrawn(id, look))
        .map(({ pair: [a, b], id }) => (
          <Mark
            key={id}
            id={id}
            look={look}
            width={{ thin: 1.5, thick: 9 }}
            draw={(className, width) => (
              <path
                class={className}
                stroke-width={width}
                d={tie(seats[a] as Seat, seats[b] as Seat, disc)}
              />
            )}
          />
        ))}
    </>
  );
}

function Legs({ engine, look, seats, disc }: Drawing): VNode {
  return (
    <>
      {seats.map((seat, c) => {
        const [from, to] = legLine(engine, c, seat, disc);
        const line = (className: string, width: number): VNode => (
          <line
            class={className}
            stroke-width={width}
            {...{ x1: from.x, y1: from.y, x2: to.x, y2: to.y }}
          />
        );
        const leg = placeId(engine, "leg", [c]);
        const lead = placeId(engine, "lead", [c]);
        return (
          <g key={leg}>
            {engine.hasLead[c] && (
              <Mark
                id={lead}
                look={look}
                width={{ thin: 7, thick: 17 }}
                draw={(className, width) => (
                  <>
                    {line(className, width)}
                    {className.startsWith("mark") && line("jacket", Math.min(width - 2.5, 5))}
                  </>
                )}
              />
            )}
            <Mark id={leg} look={look} width={{ thin: 1.5, thick: 9 }} draw={line} />
          </g>
        );
      })}
    </>
  );
}

/** The plug-in connectors: a whole ring when one feeds all, else an arc at each leg it feeds. */
function Hub({ engine, look, seats }: Drawing): VNode {
  const isShared = engine.ignition === "distributor";
  const half = Math.min(40, 220 / engine.names.length);
  return (
    <g>
      <circle class={isShared ? "hub is-cap" : "hub"} r={RADIUS.hub} />
      {engine.connectors.map(({ cylinders }) => {
        const id = placeId(engine, "connector", cylinders);
        const fed =
          engine.ignition === "hybrid" ? cylinders.filter((c) => !engine.hasLead[c]) : cylinders;
        const isWhole = cylinders.length === engine.names.length;
        return (
          <Mark
            key={id}
            id={id}
            look={look}
            width={{ thin: isWhole ? 1.5 : 3, thick: 10 }}
            draw={(className, width) =>
              isWhole ? (
                <circle class={className} r={isShared ? 24 : RADIUS.hub} stroke-width={width} />
              ) : (
                <path
                  class={className}
                  stroke-width={width}
                  d={fed.map((c) => arc(seats[c]?.angle ?? 0, half, RADIUS.hub)).join("")}
                />
              )
            }
          />
        );
      })}
    </g>
  );
}

function Coils({ engine, look, disc }: Drawing): VNode {
  return (
    <>
      {engine.groups.map((group) => {
        const id = placeId(engine, "coil", group);
        const lie = coilLie(engine, group, disc);
        const width = lie.kind === "cross" ? { thin: 5, thick: 12 } : { thin: 4.5, thick: 14 };
        return (
          <Mark
            key={id}
            id={id}
            look={look}
            width={width}
            draw={(className, stroke) => {
              if (lie.kind === "centre") {
                return (
                  <circle
                    class={className}
                    cx={CENTRE.x}
                    cy={CENTRE.y}
                    r={8}
                    stroke-width={stroke}
                  />
                );
              }
              const ends = lie.kind === "bar" ? [[lie.from, lie.to] as const] : lie.ends;
              const d = ends.map(([a, b]) => `M${a.x} ${a.y}L${b.x} ${b.y}`).join("");
              return <path class={`${className} coil`} stroke-width={stroke} d={d} />;
            }}
          />
        );
      })}
    </>
  );
}
