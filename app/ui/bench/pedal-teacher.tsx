'use client';

import { useEffect, useEffectEvent, useState } from 'react';
import { pedalActs, pedalsOf, pedalTaught, type PedalAct } from '@/lib/rules/entry-pedal';
import { pedalKeyWords, pedalNames, pedalRefusalWords, pedalWords } from '@/lib/text/bench-pedal';
import { Button } from '../primitives/button';
import styles from './device-choices.module.css';
import { useMemory } from './use-memory';
import { pedalPress, teaching } from './use-pedals';

/** The three switches of a foot, taught by pressing them. */
export function PedalTeacher() {
  const [word, say] = useMemory('pedals');
  const [act, setAct] = useState<PedalAct | null>(null);
  const [refused, setRefused] = useState('');
  const pedals = pedalsOf(word);

  const begin = (one: PedalAct | null) => {
    setAct(one);
    setRefused('');
  };
  const onKey = useEffectEvent((event: KeyboardEvent) => {
    if (act === null) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    if (event.repeat) return;
    const press = pedalPress(event);
    if (press.key === 'Escape') return begin(null);
    const found = pedalTaught(press, act, pedals);
    if (found === 'wait') return;
    if ('refused' in found) return setRefused(pedalRefusalWords(found.refused, press.key));
    say(JSON.stringify({ ...pedals, [act]: found.taught }));
    begin(null);
  });
  const isOn = act !== null;
  useEffect(() => {
    if (!isOn) return undefined;
    const pressed = (event: KeyboardEvent) => onKey(event);
    window.addEventListener('keydown', pressed, { capture: true });
    return () => window.removeEventListener('keydown', pressed, { capture: true });
  }, [isOn]);

  return (
    <div className={styles.pedals} {...(isOn ? { [teaching]: '' } : {})}>
      <ul className={styles.rows} aria-label="Pedals">
        {pedalActs.map((one) => {
          const pedal = pedals[one];
          return (
            <li key={one} className={styles.row}>
              <span>
                <b className={styles.name}>{pedalNames[one]}</b>
                <span className={styles.says}>
                  {pedal === undefined ? pedalWords.none : pedalKeyWords(pedal)}
                </span>
              </span>
              <Button
                onClick={() => begin(act === one ? null : one)}
                aria-label={`${act === one ? pedalWords.cancel : pedalWords.teach}: ${pedalNames[one]}`}
                aria-pressed={act === one}
              >
                {act === one ? pedalWords.cancel : pedalWords.teach}
              </Button>
            </li>
          );
        })}
      </ul>
      <p className={styles.says} role="status">
        {act === null ? '' : `${refused} ${refused === '' ? pedalWords.wait : ''}`.trim()}
      </p>
      {Object.keys(pedals).length === 0 ? null : (
        <Button
          onClick={() => {
            begin(null);
            say('{}');
          }}
        >
          {pedalWords.forget}
        </Button>
      )}
    </div>
  );
}
