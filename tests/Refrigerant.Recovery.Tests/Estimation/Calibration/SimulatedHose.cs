using System;

namespace Refrigerant.Recovery.Tests.Estimation.Calibration;

/// <summary>A hose by Darcy's equation with a net expansion factor (Crane TP-410, from memory) and Haaland's friction factor. SI units.</summary>
internal sealed class SimulatedHose(double meters, double bore, double fittings, double viscosity)
{
    private const double Roughness = 1e-5;
    private const double EntranceAndExit = 1.5;

    public double Meters => meters;

    private double Area => 0.25 * Math.PI * bore * bore;

    /// <summary>Loss over half the density, 1/m⁴.</summary>
    public double Resistance(double flow)
    {
        double reynolds = Math.Max(2500, 4 * flow / (Math.PI * bore * viscosity));
        double root = -1.8 * Math.Log10(Math.Pow(Roughness / bore / 3.7, 1.11) + (6.9 / reynolds));
        return ((meters / bore / (root * root)) + fittings + EntranceAndExit) / (Area * Area);
    }

    /// <summary>The bore of a hose of 2 m that loses a pressure at a flow.</summary>
    public static double BoreFor(double loss, double flow, double density)
    {
        double low = 2e-3;
        double high = 0.05;
        for (int i = 0; i < 40; i++)
        {
            double middle = 0.5 * (low + high);
            double lost = new SimulatedHose(2, middle, 2, 1.2e-5).Resistance(flow) * flow * flow / (2 * density);
            (low, high) = lost > loss ? (middle, high) : (low, middle);
        }

        return low;
    }

    /// <summary>Mass flow between two pressures, kg/s, with the resistance at the flow before.</summary>
    public double Flow(double from, double to, double density, double before)
    {
        double drop = Math.Min(0.7, Math.Max(0, (from - to) / from));
        double expansion = 1 - (0.33 * drop);
        return expansion * Math.Sqrt(2 * density * drop * from / Resistance(before));
    }
}
