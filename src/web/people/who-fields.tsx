import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { call } from '../api/client.ts';
import { peopleQuery, queryClient } from '../api/queries.ts';
import { useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { SelectField } from '../ui/select-field.tsx';
import { setAtTheBench, useAtTheBench } from './at-the-bench.ts';
import { ForgetPerson } from './forget-person.tsx';
import { NewPerson } from './new-person.tsx';

/** Who is at this device: one of the people known, somebody new, or nobody named. */
export function WhoFields() {
  const say = useSay();
  const reference = useAtTheBench();
  const { data, error, refetch } = useQuery(peopleQuery);
  const [problem, setProblem] = useState<unknown>();
  if (error !== null) return <ProblemNote problem={error} onRetry={() => void refetch()} />;
  if (data === undefined) return <p className="soft">{say('shell.loading')}</p>;
  const chosen = data.find((person) => person.reference === reference);
  const attempt = async (work: () => Promise<void>): Promise<boolean> => {
    setProblem(undefined);
    try {
      await work();
      await queryClient.invalidateQueries({ queryKey: peopleQuery.queryKey });
      return true;
    } catch (failure) {
      setProblem(failure);
      return false;
    }
  };
  return (
    <>
      <SelectField
        label={say('people.who')}
        value={chosen?.reference ?? ''}
        options={[{ value: '', label: say('people.who.nobody') }, ...data.map(({ reference: value, name }) => ({ value, label: name }))]}
        onChange={(value) => { setAtTheBench(value === '' ? null : value); }}
        hint={say('people.who.hint')}
      />
      <NewPerson onAdd={(name) => attempt(async () => { setAtTheBench((await call('addPerson', { body: { name } })).reference); })} />
      {chosen !== undefined && <ForgetPerson key={chosen.reference} name={chosen.name} onForget={() => attempt(async () => { await call('forgetPerson', { params: { reference: chosen.reference } }); setAtTheBench(null); })} />}
      {problem !== undefined && <ProblemNote problem={problem} />}
    </>
  );
}
