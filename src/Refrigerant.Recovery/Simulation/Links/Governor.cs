using System;

namespace Refrigerant.Recovery.Simulation.Links;

/// <summary>A hand on the inlet valve: the share of the flow let through so that something stays clear of a limit.</summary>
/// <remarks>1 where the margin is at least the band, 0 where it is at most half of it, smooth between.</remarks>
internal sealed class Governor(Func<double> margin, double band)
{
    public double Share()
    {
        double share = Math.Min(1, Math.Max(0, (margin() - (0.5 * band)) / (0.5 * band)));
        return share * share * (3 - (2 * share));
    }
}
