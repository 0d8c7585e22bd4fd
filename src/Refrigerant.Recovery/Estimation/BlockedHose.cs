using System;

namespace Refrigerant.Recovery.Estimation;

/// <summary>A hose that was found blocked, until it lets through again: the pressure at the inlet then comes up towards the one in the appliance. Fixed memory.</summary>
internal sealed class BlockedHose
{
    /// <summary>Blocks in a row in which half of the drop over a blocked hose is gone, from which it counts as free again.</summary>
    public const int FreeBlocks = 5;

    /// <summary>Times the lowest pressure since it was found blocked that the pressure at the inlet then has.</summary>
    private const double Rises = 1.05;

    private double _share;
    private double _lowest;
    private double _behind;
    private int _free;

    /// <summary>Whether liquid was left, for all that was known, when the pressure at the inlet stood lowest.</summary>
    public bool IsWetBehind { get; private set; }

    /// <summary>It has just been found blocked.</summary>
    /// <param name="seen">Absolute pressure at the inlet, Pa.</param>
    /// <param name="pressure">In the appliance, Pa.</param>
    public void Begin(double seen, double pressure)
    {
        _share = seen / pressure;
        _lowest = seen;
        _free = 0;
    }

    /// <summary>Takes in a block; whether it is free again.</summary>
    /// <param name="seen">Absolute pressure at the inlet, Pa.</param>
    /// <param name="pressure">In the appliance, Pa.</param>
    /// <param name="vaporOnly">Probability that no liquid is left.</param>
    public bool IsFree(double seen, double pressure, double vaporOnly)
    {
        _lowest = Math.Min(_lowest, seen);
        if (seen <= Rises * _lowest)
        {
            _behind = pressure;
            IsWetBehind = vaporOnly < ParityRelations.Dry;
        }

        _free = seen / _behind > 0.5 * (1 + _share) && seen > Rises * _lowest ? _free + 1 : 0;
        return _free >= FreeBlocks;
    }
}
