using System;

namespace Refrigerant.Recovery.Processes;

/// <summary>Single figures of a stage besides its course; plain SI doubles.</summary>
internal sealed class StageFigures
{
    public double LiquidGoneAt { get; set; } = double.NaN;

    public double FreezingAt { get; set; } = double.NaN;

    /// <summary>K; infinite where no moment was recorded.</summary>
    public double Coldest { get; set; } = double.PositiveInfinity;

    /// <summary>What passed the machine, and what would have passed it without hoses, kg.</summary>
    public double Passed { get; set; }

    public double FreeFlow { get; set; }

    /// <summary>The share of the second that the first is; 1 where hoses do not count.</summary>
    public double SuctionLineShare => FreeFlow > 0 ? Math.Min(1, Passed / FreeFlow) : 1;

    public double HottestDischarge { get; set; } = double.NaN;

    public double LargestDrive { get; set; }

    public double LiquidMoved { get; set; }

    public bool WasChoked { get; set; }

    /// <summary>Whether what left the range of the equation of state last was the content of the cylinder.</summary>
    public bool CylinderOutOfRange { get; set; }

    /// <summary>Largest share by which the cylinder is below the saturation pressure of the liquid that flows to it.</summary>
    public double DeepestFlashing { get; set; }

    public FractionationResult? Fractionation { get; set; }
}
