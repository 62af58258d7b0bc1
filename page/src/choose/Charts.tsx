// The job's pictures: columns of the answer, nothing computed.
import { useMemo } from 'preact/hooks';
import { Chart, type ChartData, type Series } from '../chart/Chart';
import { useApped } from '../ui/context';

const over = (envelope: any) => ({ name: 'roll diameter', kind: 'short_length', values: envelope.diameter as number[] });
const flat = (value: number, count: number): number[] => Array.from({ length: count }, () => value);

export function torqueChart(envelope: any): ChartData {
  return {
    title: 'Brake torque over the roll',
    x: over(envelope),
    y: { name: 'torque', kind: 'torque' },
    series: [
      { name: 'run', role: 'main', values: envelope.run },
      { name: 'normal stop', role: 'second', values: envelope.stop },
      { name: 'emergency stop', role: 'third', values: envelope.emergency_stop },
      { name: 'standstill', role: 'fourth', values: envelope.hold },
      { name: 'ramp up', role: 'fifth', values: envelope.ramp },
      { name: 'capacity, least', role: 'limit', side: 'above', values: envelope.capacity_low },
    ],
  };
}

function boundOf(job: any, key: string): number | null {
  return job.limits.find((one: any) => one.key === key)?.bound ?? null;
}

function temperatureChart(job: any, envelope: any): ChartData {
  const most = boundOf(job, 'disc_temperature');
  const limit: Series[] = most === null ? [] : [{ name: 'disc rating', role: 'limit', side: 'above', values: flat(most, envelope.diameter.length) }];
  return {
    title: 'Disc temperature over the roll, steady',
    x: over(envelope),
    y: { name: 'temperature', kind: 'temperature' },
    series: [{ name: 'disc', role: 'main', values: envelope.temperature }, ...limit],
  };
}

export function pressureChart(plan: any): ChartData {
  const points = [...plan.automatic].reverse();
  const column = (key: string) => points.map((one: any) => one[key] as number);
  // A setting holds from one diameter down to the next: a step with an end at each.
  const settings: any[] = [...plan.by_hand].reverse();
  const byHand: Series = { name: 'by hand', role: 'second', at: settings.flatMap((one) => [one.to, one.from]), values: settings.flatMap((one) => [one.pressure, one.pressure]) };
  return {
    title: 'Pressure to set over the roll',
    x: { name: 'roll diameter', kind: 'short_length', values: column('diameter') },
    y: { name: 'pressure', kind: 'pressure' },
    series: [{ name: 'control by diameter', role: 'main', values: column('pressure') }, ...(settings.length > 0 ? [byHand] : [])],
  };
}

function heatChart(job: any): ChartData {
  const heat = job.thermal;
  return {
    title: 'One roll and its change-over, repeating',
    x: { name: 'time', kind: 'duration', values: heat.time },
    y: { name: 'temperature', kind: 'temperature' },
    series: [
      { name: 'disc', role: 'main', values: heat.disc },
      { name: 'pads', role: 'second', values: heat.pads },
      { name: 'calipers', role: 'third', values: heat.calipers },
      { name: 'hub', role: 'fourth', values: heat.hub },
    ],
  };
}

function windowChart(job: any): ChartData {
  const at = job.window.over_roll;
  const column = (key: string) => at.map((one: any) => (one[key] as number | undefined) ?? null);
  return {
    title: 'Tension window over the roll',
    x: { name: 'roll diameter', kind: 'short_length', values: at.map((one: any) => one.diameter) },
    y: { name: 'tension', kind: 'force' },
    series: [
      { name: 'setpoint', role: 'main', values: flat(job.tension.setpoint, at.length) },
      { name: 'upper bound', role: 'limit', side: 'above', values: column('high') },
      { name: 'lower bound', role: 'limit', side: 'below', values: column('low') },
    ],
  };
}

export function Charts({ job, envelope, plan }: { job: any; envelope: any; plan: any }) {
  const units = useApped((s) => s.units);
  const charts = useMemo(() => {
    const list: ChartData[] = [];
    if (envelope) list.push(torqueChart(envelope), temperatureChart(job, envelope));
    if (plan?.automatic?.length > 1) list.push(pressureChart(plan));
    if (job.thermal?.time?.length > 1) list.push(heatChart(job));
    if (job.window?.over_roll?.length > 1) list.push(windowChart(job));
    return list;
  }, [job, envelope, plan]);
  return <div class="charts">{charts.map((one) => <Chart key={one.title} data={one} units={units} />)}</div>;
}
