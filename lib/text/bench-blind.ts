/** What is said of a set that is measured unseen: how far it is, and when it will be shown. */
export function blindWords({ taken, of }: { taken: number; of: number }): {
  title: string;
  says: string;
} {
  const left = of - taken;
  return {
    title: `${taken} of ${of}`,
    says:
      taken === 0
        ? `Nothing is shown until ${of === 1 ? 'it is' : `all ${of} are`} taken.`
        : left <= 0
          ? 'Answer what is asked, then all are shown.'
          : `Kept. ${left} more, then all are shown.`,
  };
}

/** What a place shows whose reading is hidden. */
export const blindTaken = 'taken';
