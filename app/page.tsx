import type { Metadata } from 'next';
import { chosenHere, deviceId } from './chosen';
import { jobsHere } from './jobs-here';
import { CarryOn } from './ui/jobs/carry-on';
import { ExampleDoor } from './ui/jobs/example-door';
import { JobsRegister } from './ui/jobs/jobs-register';
import styles from './ui/jobs/jobs.module.css';
import { LinkButton } from './ui/primitives/link-button';
import { EmptyState } from './ui/primitives/empty-state';
import { ShopFrame } from './ui/shop/shop-frame';

export const metadata: Metadata = { title: 'Jobs' };

export default async function JobsPage() {
  const { lines, stopped } = await jobsHere(await chosenHere(), await deviceId());
  if (lines.length === 0) {
    return (
      <ShopFrame current="Jobs">
        <h1 className="unseen">Jobs</h1>
        <EmptyState sentence="No jobs yet. Start one from a drawing, or open the example and look round.">
          <div className={styles.doors}>
            <LinkButton kind="main" href="/start">
              Start a job
            </LinkButton>
            <ExampleDoor />
          </div>
        </EmptyState>
      </ShopFrame>
    );
  }
  return (
    <ShopFrame current="Jobs">
      <h1 className="unseen">Jobs</h1>
      {stopped !== null && <CarryOn stopped={stopped} />}
      <JobsRegister jobs={lines} />
      <div className={styles.doors}>
        <LinkButton {...(stopped === null ? { kind: 'main' as const } : {})} href="/start">
          Start a job
        </LinkButton>
      </div>
    </ShopFrame>
  );
}
