namespace Refrigerant.Recovery.Tests.Estimation.Truths;

/// <summary>A line of a simulated log: what the instruments show, then the truth. SI; gauge pressure; NaN where a reading dropped out.</summary>
public readonly record struct TruthSample(
    double Time, double Gauge, double Gross, double Air, bool IsRunning, bool IsValveOpen, double Left, double Pressure, double Liquid);
