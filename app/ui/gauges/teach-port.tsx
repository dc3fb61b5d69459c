'use client';

import { useEffect, useEffectEvent, useState } from 'react';
import { browserPorts } from '@/lib/gauge-port/browser-ports';
import { followPort, type PortState } from '@/lib/gauge-port/follow-port';
import type { GaugePort, PortSettings } from '@/lib/gauge-port/port';
import type { Arrival } from '@/lib/rules/teach-gauge';
import type { Gauge } from '@/lib/schema/gauge';
import { serialFrames, type SerialFrame } from '@/lib/schema/serial-frames';
import { portSpoiltWords, portStateWords } from '@/lib/text/gauge-port-words';
import { Button } from '../primitives/button';
import { Field, SelectField } from '../primitives/field';
import styles from './teach-gauge.module.css';

export type ChosenPort = { make: string; settings: PortSettings };

type Props = {
  gauge: Gauge;
  onHeard: (arrivals: readonly Arrival[]) => void;
  /** What came so far is not to be learnt from. */
  onSpoilt: () => void;
  onChosen: (port: ChosenPort | null) => void;
};

/** What the manuals of meters ask for most often; anything else is set by hand. */
const usual = ['9600 8N1', '4800 7E2', '2400 8N1'];

/** How the port is set, which one it is, and what comes from it. */
export function TeachPort({ gauge, onHeard, onSpoilt, onChosen }: Props) {
  const kept = gauge.serialBaud === null ? usual[0]! : `${gauge.serialBaud} ${gauge.serialFrame}`;
  const [set, setSet] = useState(usual.includes(kept) ? kept : 'other');
  const [baud, setBaud] = useState(String(gauge.serialBaud ?? 9600));
  const [frame, setFrame] = useState<SerialFrame>(gauge.serialFrame ?? '8N1');
  const [port, setPort] = useState<GaugePort | null>(null);
  const [state, setState] = useState<PortState | null>(null);
  const [spoilt, setSpoilt] = useState<string | null>(null);
  const [baudOf, frameOf] = set === 'other' ? [baud, frame] : set.split(' ');
  const baudRate = Number(baudOf);
  const isBaud = Number.isInteger(baudRate) && baudRate >= 75 && baudRate <= 4_000_000;
  const { name } = gauge;

  const heard = useEffectEvent((bytes: Uint8Array) => {
    setSpoilt(null);
    const atMs = performance.now();
    onHeard([...bytes].map((byte) => ({ character: String.fromCharCode(byte), atMs })));
  });
  const garbled = useEffectEvent((words: string) => {
    setSpoilt(words);
    onSpoilt();
  });
  useEffect(() => {
    const house = browserPorts();
    if (port === null || house === null || !isBaud) return;
    const settings = { baudRate, frame: frameOf as SerialFrame };
    const following = followPort({
      house,
      port,
      settings,
      cut: 'line',
      pauseMs: 150,
      onBytes: (bytes) => heard(bytes),
      onMessage: () => {},
      onSpoilt: (by) => garbled(portSpoiltWords(by, name)),
      onState: setState,
    });
    return () => void following.stop();
  }, [port, baudRate, isBaud, frameOf, name]);

  function change(): void {
    onSpoilt();
    setSpoilt(null);
    setPort(null);
    setState(null);
    onChosen(null);
  }

  async function choose(): Promise<void> {
    const picked = await browserPorts()
      ?.choose()
      .catch(() => null);
    if (!picked) return;
    onSpoilt();
    setPort(picked);
    onChosen({ make: picked.make, settings: { baudRate, frame: frameOf as SerialFrame } });
  }

  return (
    <div className={styles.teach}>
      <div className={styles.pair}>
        <SelectField
          label="The port is set to"
          hint="as the gauge\u2019s manual says"
          value={set}
          onChange={(next) => {
            change();
            setSet(next);
          }}
          options={[
            ...usual.map((value) => ({ value, label: value })),
            { value: 'other', label: 'something else' },
          ]}
        />
        {set === 'other' ? (
          <>
            <Field
              label="Speed"
              hint="baud"
              inputMode="numeric"
              value={baud}
              onChange={(event) => {
                change();
                setBaud(event.target.value);
              }}
              error={isBaud ? undefined : 'From 75 to 4000000.'}
            />
            <SelectField
              label="Bits"
              value={frame}
              onChange={(next) => {
                change();
                setFrame(next as SerialFrame);
              }}
              options={serialFrames.map((value) => ({ value, label: value }))}
            />
          </>
        ) : null}
      </div>
      <div className={styles.buttons}>
        <Button disabled={!isBaud} onClick={() => void choose()}>
          {port === null ? 'Choose the port' : 'Choose another port'}
        </Button>
      </div>
      {spoilt === null && state === null ? null : (
        <p className={spoilt === null ? styles.says : styles.trouble} role="status">
          {spoilt ?? portStateWords(state!, name)}
        </p>
      )}
    </div>
  );
}
