namespace Refrigerant.Recovery.Samples.Controller;

/// <summary>A stretch of time, s; never by default.</summary>
internal readonly record struct Interval(double From, double Until)
{
    public bool Holds(double seconds) => seconds >= From && seconds < Until;
}
