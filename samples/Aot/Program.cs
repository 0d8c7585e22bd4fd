using System;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;
using Refrigerant.Recovery.Samples.Console;

// The chiller of the console sample, compiled ahead of time: the whole job, and its way through JSON and back.
RecoveryJob job = RecoveryJobJson.Read(RecoveryJobJson.Write(ChillerJob.Create()));
RecoveryPlan plan = RecoveryPlanner.Plan(job);
Console.WriteLine(plan);
Console.WriteLine(plan.Ledger);
foreach (Finding finding in plan.Findings.Where(finding => finding.Severity >= Severity.Caution).Concat(plan.Cautions))
{
    Console.WriteLine(finding);
}
