using System;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using Xunit;

namespace Refrigerant.Recovery.CoolProp.Tests;

/// <summary>Whatever goes in, what comes out is finite or one of the documented exceptions.</summary>
[Collection("native")]
public sealed class HostileInputTests
{
    private const int Trials = 200;

    [StandInFact]
    public void A_pure_fluid_gives_finite_numbers_or_a_documented_exception() =>
        Bombard(CoolPropFluid.Load("R901", StandIn.Library).Model);

    [StandInFact]
    public void A_blend_gives_finite_numbers_or_a_documented_exception() => Bombard(
        CoolPropFluid.FromMoleFractions("blend", [new("R901", 0.5), new("R902", 0.5)], StandIn.Library).Model);

    private static void Bombard(PropertyModel model)
    {
        const int Seed = 20;
        var random = new Random(Seed);
        int answered = 0;
        for (int i = 0; i < Trials; i++)
        {
            double t = Draw(random, 200, 450);
            double p = Draw(random, 1e3, 4e7);
            double density = Draw(random, 0.1, 1100);
            double energy = Draw(random, 1e5, 7e5);
            double entropy = Draw(random, 500, 3000);
            answered += Ask(() => Check(model.SaturationAtTemperature(t).Dew));
            answered += Ask(() => Check(model.SaturationAtPressure(p).Bubble));
            answered += Ask(() => Check(model.StateAt(t, p)));
            answered += Ask(() => Check(model.VesselAtTemperature(t, density).Bulk));
            answered += Ask(() => Check(model.VesselAtEnergy(density, energy).Bulk));
            answered += Ask(() => Check(model.StateAtEnthalpy(p, energy)));
            answered += Ask(() => Check(model.StateAtEntropy(p, entropy)));
            answered += Ask(() => Check(model.DerivativesAt(t, density)));
            answered += Ask(() => Check(model.ViscosityAtSaturation(t)));
        }

        Assert.InRange(answered, Trials, Trials * 9);
    }

    /// <summary>Mostly within the range, sometimes far outside it, sometimes no number.</summary>
    private static double Draw(Random random, double low, double high) => random.Next(20) switch
    {
        0 => double.NaN,
        1 => double.PositiveInfinity,
        2 => -high * random.NextDouble(),
        3 => high * 1e6 * random.NextDouble(),
        4 => 0,
        5 => double.Epsilon,
        < 10 => high * Math.Pow(10, -8 * random.NextDouble()),
        _ => low + ((high - low) * random.NextDouble()),
    };

    private static int Ask(Action question)
    {
        try
        {
            question();
            return 1;
        }
        catch (Exception error) when (error is PropertyRangeException or CoolPropException or ConvergenceException)
        {
            return 0;
        }
    }

    private static void Check(in StatePoint point)
    {
        Assert.NotEqual(Phase.Undefined, point.Phase);
        Finite(point.Temperature, point.Pressure, point.Density, point.Enthalpy, point.Entropy, point.InternalEnergy);
        Assert.InRange(point.VaporFraction, 0, 1);
    }

    private static void Check(in StateDerivatives set) => Finite(
        set.IsochoricHeatCapacity, set.IsobaricHeatCapacity, set.SpeedOfSound, set.PressureByDensity, set.PressureByTemperature);

    private static void Check(in SaturationViscosity viscosity) => Finite(viscosity.Liquid, viscosity.Vapor);

    private static void Finite(params double[] values) => Assert.All(values, value => Assert.True(double.IsFinite(value)));
}
