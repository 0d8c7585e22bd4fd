namespace Refrigerant.Recovery.Tests.Estimation.Truths;

/// <summary>An estimate against the truth; masses as shares of the charge, times of the job.</summary>
public sealed record ScorePoint(bool Holds, double Error, double Width, double TimeError, bool TimeHolds, double Left, double Low, double Best, double High);
