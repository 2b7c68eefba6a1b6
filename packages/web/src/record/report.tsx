// What a record tells: how the plugs wore, which stands apart and what that points to, when the next are due.
import {
  convert,
  type EngineProfile,
  type Figures,
  InputError,
  type PlugEntry,
  type PlugRecord,
  type WearLine,
  type WearReport,
  wearReport,
} from "@half-order/core";
import type { VNode } from "preact";
import { hasAllFindings } from "../state/prose.ts";
import { sayAbout, sayFigure, sayQuantity, toUnit, units } from "../state/unit.ts";
import { LAZY, list } from "../text/en.ts";
import { WEAR } from "../text/en-record.ts";
import { Problems } from "../ui/problems.tsx";
import { Words } from "../ui/term.tsx";
import { sayDay } from "./day.ts";
import { sayLook, sayPutIn } from "./look.ts";
import { Manual } from "./manual.tsx";
import { NextPlugs } from "./next-plugs.tsx";
import { sayOver } from "./over.ts";
import { WearChart, WearKey } from "./wear-chart.tsx";

interface ReportProps {
  readonly profile: EngineProfile;
  readonly record: PlugRecord;
  readonly records: readonly PlugRecord[];
}

export function Report({ profile, record, records }: ReportProps): VNode {
  // The limit of a gap is in a row that may not be here yet.
  if (!hasAllFindings()) return <p class="help">{LAZY.coming}</p>;
  const report = reportOf(profile, record);
  if (report instanceof InputError) {
    return <Problems title={WEAR.cannot} of={report.problems} />;
  }
  return (
    <section class="report">
      <h2>{WEAR.title(sayDay(record.when))}</h2>
      <Wear report={report} record={record} range={profile.figures?.plugGapMm} />
      <Manual profile={profile} />
      <NextPlugs profile={profile} record={record} records={records} report={report} />
    </section>
  );
}

function reportOf(profile: EngineProfile, record: PlugRecord): WearReport | InputError {
  try {
    return wearReport(profile, record);
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
}

interface WearProps {
  readonly report: WearReport;
  readonly record: PlugRecord;
  /** The gap that the manual gives for a new plug. */
  readonly range: Figures["plugGapMm"];
}

function Wear({ report, record, range }: WearProps): VNode {
  const { plugs } = record;
  if (report.lines.length === 0) {
    return (
      <>
        <WearTable report={report} plugs={plugs} />
        <p class="help">{WEAR.noGaps}</p>
      </>
    );
  }
  const apart = report.lines.filter(({ isOutlier }) => isOutlier).map(({ cylinder }) => cylinder);
  return (
    <>
      <figure class="wear">
        <WearChart report={report} />
        <figcaption>
          <WearKey report={report} range={range} isFreshKnown={record.newGapMm !== undefined} />
        </figcaption>
      </figure>
      {range && <p>{sayOver(report, range)}</p>}
      {apart.length > 0 && (
        <p class="wear-apart">
          <strong>{WEAR.apart(list(apart), apart.length)}</strong> {report.isFew && WEAR.few}
        </p>
      )}
      {report.patterns.map(({ id, say, look }) => (
        <p key={id}>
          <b>{say}</b> <Words text={look} />
        </p>
      ))}
      <WearTable report={report} plugs={plugs} />
      {report.distanceKm === undefined && <p class="help">{WEAR.noDistance}</p>}
      {report.limitMm === undefined && <p class="help">{WEAR.noLimit}</p>}
    </>
  );
}

interface WearTableProps {
  readonly report: WearReport;
  /** All plugs of the record, also those whose gap was not measured. */
  readonly plugs: readonly PlugEntry[];
}

function WearTable({ report: { lines, limitMm }, plugs }: WearTableProps): VNode | null {
  const choice = units.value;
  const rows = plugs.filter((plug) => Object.keys(plug).length > 1).sort(byName);
  const hasRate = lines.some(({ mmPer10000Km }) => mmPer10000Km !== undefined);
  const hasLimit = limitMm !== undefined && hasRate;
  if (rows.length === 0) return null;
  return (
    <div class="wear-table">
      <table>
        <thead>
          <tr>
            <th scope="col">{WEAR.cylinder}</th>
            <th scope="col">{WEAR.gap}</th>
            {hasRate && (
              <th scope="col">
                {WEAR.rate(choice.gap, sayFigure(10_000, choice.distance), choice.distance)}
              </th>
            )}
            {hasLimit && <th scope="col">{WEAR.toLimit}</th>}
          </tr>
        </thead>
        <tbody>
          {rows.map((plug) => {
            const { cylinder, gapMm, look } = plug;
            const putIn = sayPutIn(plug);
            const line = lines.find((each) => each.cylinder === cylinder);
            return (
              <tr key={cylinder}>
                <th scope="row">
                  {cylinder}
                  {look !== undefined && <small>{sayLook(look)}</small>}
                  {line?.isOutlier && <small>{WEAR.standsApart}</small>}
                  {putIn && <small>{putIn}</small>}
                </th>
                <td>{gapMm === undefined ? WEAR.unknown : sayQuantity(gapMm, "gap")}</td>
                {hasRate && <td>{line ? sayRate(line) : WEAR.unknown}</td>}
                {hasLimit && <td>{line ? sayLimit(line) : WEAR.unknown}</td>}
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

const { compare } = new Intl.Collator(undefined, { numeric: true });

function byName(a: PlugEntry, b: PlugEntry): number {
  return compare(String(a.cylinder), String(b.cylinder));
}

/** Growth in the person's units: of gap, over ten thousand of the person's distance. */
function sayRate({ mmPer10000Km }: WearLine): string {
  if (mmPer10000Km === undefined) return WEAR.unknown;
  const { gap, distance } = units.value;
  const rate = toUnit(mmPer10000Km, "gap", gap) * convert(1, distance, "km");
  const digits = new Intl.NumberFormat(undefined, { maximumSignificantDigits: 2 });
  return digits.format(rate);
}

function sayLimit({ limitInKm }: WearLine): string {
  if (limitInKm === undefined) return WEAR.unknown;
  if (limitInKm === 0) return WEAR.atLimit;
  // No gauge and no odometer is good for more than two digits of a distance to come.
  return sayAbout(limitInKm, "distance", 2);
}
