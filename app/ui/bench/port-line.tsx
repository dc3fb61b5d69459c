'use client';

import { useEffect, useEffectEvent, useState } from 'react';
import { flushSync } from 'react-dom';
import { browserPorts } from '@/lib/gauge-port/browser-ports';
import { followPort, type PortState } from '@/lib/gauge-port/follow-port';
import type { MessageCut } from '@/lib/gauge-port/message-reader';
import type { GaugePort } from '@/lib/gauge-port/port';
import { serialText } from '@/lib/rules/serial-text';
import type { Gauge, MessageEnd } from '@/lib/schema/gauge';
import { portSpoiltWords, portStateWords } from '@/lib/text/gauge-port-words';
import styles from './port-line.module.css';
import { useMemory } from './use-memory';

type Props = { gauge: Gauge; onReading: (text: string) => void };

/** Follows the port of the chosen gauge while it is chosen, and says in a sentence where its line stands. */
export default function PortLine({ gauge, onReading }: Props) {
  const { name, serialBaud, serialFrame, sendsEnd, sendsPauseMs } = gauge;
  const [make, rememberMake] = useMemory(`port:${gauge.id}`);
  const [chosen, setChosen] = useState<GaugePort | null>(null);
  const port = chosen ?? make ?? 'none';
  const [state, setState] = useState<PortState>('opening');
  const [spoilt, setSpoilt] = useState<string | null>(null);
  const read = useEffectEvent((message: string) => {
    const text = serialText(message);
    if (text === '') return;
    // Each is judged by the bench as it is after the one before, as key presses are.
    flushSync(() => {
      setSpoilt(null);
      onReading(text);
    });
  });

  useEffect(() => {
    const house = browserPorts();
    if (house === null || serialBaud === null || serialFrame === null) return;
    const following = followPort({
      house,
      port,
      settings: { baudRate: serialBaud, frame: serialFrame },
      cut: cuts[sendsEnd ?? 'enter'],
      pauseMs: sendsPauseMs ?? 150,
      onMessage: (text) => read(text),
      onSpoilt: (by) => setSpoilt(portSpoiltWords(by, name)),
      onState: (now) => {
        setState(now);
        if (now === 'open') setSpoilt(null);
      },
    });
    return () => void following.stop();
  }, [name, port, serialBaud, serialFrame, sendsEnd, sendsPauseMs]);

  async function choose(): Promise<void> {
    const picked = await browserPorts()
      ?.choose()
      .catch(() => null);
    if (!picked) return;
    setChosen(picked);
    rememberMake(picked.make);
  }

  const canChoose = state !== 'open' && state !== 'opening';
  return (
    <p
      className={styles.line}
      role="status"
      data-decide={canChoose || spoilt !== null || undefined}
    >
      {spoilt ?? portStateWords(state, name)}{' '}
      {canChoose ? (
        <button type="button" onClick={() => void choose()}>
          Choose its port
        </button>
      ) : null}
    </p>
  );
}

const cuts: Record<MessageEnd, MessageCut> = {
  enter: 'line',
  tab: 'tab',
  comma: 'comma',
  space: 'pause',
  nothing: 'pause',
};
