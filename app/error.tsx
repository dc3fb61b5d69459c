'use client';

/** What a sheet says when it could not be drawn. Nothing kept is lost by it. */
export default function SheetError({ reset }: { error: Error; reset: () => void }) {
  return (
    <main>
      <p className="t-section">This sheet could not be drawn.</p>
      <p className="t-sentence">
        Everything kept is still in the notebook. Draw it again; if it fails again, the reason is in
        the log of the machine that runs Fitwright.
      </p>
      <button type="button" onClick={reset}>
        Draw it again
      </button>
    </main>
  );
}
