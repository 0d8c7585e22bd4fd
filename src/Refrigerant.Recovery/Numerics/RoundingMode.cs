namespace Refrigerant.Recovery.Numerics;

/// <summary>To which side a number is rounded for people.</summary>
public enum RoundingMode
{
    /// <summary>To the nearest.</summary>
    Nearest = 0,

    /// <summary>Down: for a limit that must not be exceeded.</summary>
    Down,

    /// <summary>Up: for what is needed at least.</summary>
    Up,
}
