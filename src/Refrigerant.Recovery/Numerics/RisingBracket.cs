namespace Refrigerant.Recovery.Numerics;

/// <summary>
/// The bounds of a Newton iteration for a function that rises throughout: each value seen narrows them, and a step that would leave them is
/// cut to an end that was not tried yet, or to their middle.
/// </summary>
internal struct RisingBracket
{
    private readonly double _lowest;
    private readonly double _highest;
    private double _low;
    private double _high;

    /// <param name="lowest">Lower end of the search.</param>
    /// <param name="highest">Upper end of the search.</param>
    public RisingBracket(double lowest, double highest)
    {
        _lowest = lowest;
        _highest = highest;
        _low = lowest;
        _high = highest;
    }

    /// <summary>How far the bounds are apart, relative.</summary>
    public readonly double Width => (_high - _low) / _high;

    private readonly double Middle => 0.5 * (_low + _high);

    /// <summary>A value within the ends of the search.</summary>
    public readonly double Within(double x) => x < _lowest ? _lowest : x > _highest ? _highest : x;

    /// <summary>Whether what is missing at an end lies beyond it.</summary>
    public readonly bool IsBeyond(double x, double missing) => (x <= _lowest && missing < 0) || (x >= _highest && missing > 0);

    /// <summary>The next value to try.</summary>
    /// <param name="x">The value tried last.</param>
    /// <param name="missing">Target less the function there.</param>
    /// <param name="change">Newton's step.</param>
    /// <param name="bisect">Whether to halve the bounds instead: for an iteration that lasts too long.</param>
    public double Next(double x, double missing, double change, bool bisect)
    {
        if (missing > 0)
        {
            _low = x;
        }
        else
        {
            _high = x;
        }

        double next = x + change;
        return !(next > _low) ? (_low == _lowest && x > _lowest ? _lowest : Middle)
            : !(next < _high) ? (_high == _highest && x < _highest ? _highest : Middle)
            : bisect ? Middle
            : next;
    }
}
