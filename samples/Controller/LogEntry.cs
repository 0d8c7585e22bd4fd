using Refrigerant.Recovery.Estimation;

namespace Refrigerant.Recovery.Samples.Controller;

/// <summary>What is kept of a minute.</summary>
/// <param name="Readings">What the sensors show.</param>
/// <param name="Estimate">What the estimator makes of them.</param>
/// <param name="Left">What is left in truth, kg.</param>
internal readonly record struct LogEntry(Readings Readings, RawEstimate Estimate, double Left);
