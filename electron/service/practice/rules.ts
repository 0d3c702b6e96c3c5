import { checkHeatLimits, withRules } from '../../../core/index.ts';
import { wholeSentence } from '../../contract/limits.ts';
import { toRuleChanges } from '../../contract/plans/request.ts';
import type { RuleChange } from '../../contract/records.ts';
import type { Handlers } from '../database/context.ts';
import { putRow } from '../database/rows.ts';
import { badField } from '../refuse.ts';
import type { Db } from '../database/schema.ts';

/** The rules this practice changed. */
export function readRules(db: Db): Promise<RuleChange[]> {
  return db.selectFrom('ruleChange').selectAll().orderBy('ruleId').execute();
}

export const ruleHandlers: Handlers<'rules/set'> = {
  'rules/set': async (context, { ruleId, value, reason }) => {
    const others = (await readRules(context.db)).filter((change) => change.ruleId !== ruleId);
    if (value === null) {
      checkHeatLimits(toRuleChanges(others));
      await context.db.deleteFrom('ruleChange').where('ruleId', '=', ruleId).execute();
      return readRules(context.db);
    }
    if (reason === '') throw badField('reason', 'Reason for the change is needed.');
    const change: RuleChange = { ruleId, value, reason, updatedAt: context.instant() };
    // Core names the rule, its unit and range when the value does not fit.
    const rule = withRules(toRuleChanges([change])).find(({ id }) => id === ruleId);
    // A rule there was once is read and passed over, but not changed any more.
    if (rule === undefined) throw badField('ruleId', 'This rule is no longer used.');
    if (rule.whole === true && !Number.isInteger(value)) {
      throw badField('value', wholeSentence({ ...rule, label: `“${rule.name}”` }));
    }
    checkHeatLimits(toRuleChanges([...others, change]));
    await putRow(context.db, 'ruleChange', 'ruleId', change);
    return readRules(context.db);
  },
};
