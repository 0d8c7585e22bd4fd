namespace Refrigerant.Recovery.Estimation;
internal static class JobLogCheck { public static System.Collections.Generic.IReadOnlyList<Findings.Finding> Of(JobLog log, Planning.RecoveryJob job) => []; }
