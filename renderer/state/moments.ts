/** ISO instant → the local day, `2026-03-09`. */
export function localDay(iso: string): string {
  const at = new Date(iso);
  return Number.isNaN(at.getTime()) ? iso : `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
}

/** ISO instant → local day and minute, `2026-03-09 14:05`. */
export function localMoment(iso: string): string {
  const at = new Date(iso);
  return Number.isNaN(at.getTime()) ? iso : `${localDay(iso)} ${two(at.getHours())}:${two(at.getMinutes())}`;
}

/** ISO instant → local day, second and zone, for a tooltip: `2026-03-09 14:05:33 +01:00`. */
export function exactMoment(iso: string): string {
  const at = new Date(iso);
  if (Number.isNaN(at.getTime())) return iso;
  const offset = -at.getTimezoneOffset();
  const zone = `${offset < 0 ? '−' : '+'}${two(Math.floor(Math.abs(offset) / 60))}:${two(Math.abs(offset) % 60)}`;
  return `${localMoment(iso)}:${two(at.getSeconds())} ${zone}`;
}

function two(value: number): string {
  return String(value).padStart(2, '0');
}
