using System;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// Starts for a two-phase equilibrium of one mole of the bulk, from the curves: between its bubble point and its dew point, K factors and densities
/// change little and smoothly.
/// </summary>
internal static class SplitStart
{
    /// <summary>A start as near the phase boundary as this, in molar vapor fraction, is moved inside.</summary>
    private const double Inside = 1e-9;

    /// <summary>At a temperature and a molar vapor fraction.</summary>
    public static void AtFraction(MixtureEngine engine, MixtureScratch scratch, double temperature, double fraction)
    {
        double incipientVapor = engine.Curves.Bubble.Split(temperature, scratch.LogK);
        double incipientLiquid = engine.Curves.Dew.Split(temperature, scratch.OtherLogK);
        double beta = Math.Max(Inside, Math.Min(1 - Inside, fraction));
        for (int i = 0; i < scratch.LogK.Length; i++)
        {
            scratch.LogK[i] += beta * (scratch.OtherLogK[i] - scratch.LogK[i]);
        }

        Scale(engine.Composition, scratch.LogK, beta);
        Densities(engine, temperature, beta, incipientLiquid, incipientVapor, out double liquid, out double vapor);
        Set(engine, scratch, temperature, beta, liquid, vapor);
    }

    /// <summary>At a temperature and a pressure between dew and bubble pressure.</summary>
    public static void AtPressure(MixtureEngine engine, MixtureScratch scratch, double temperature, double pressure)
    {
        double incipientVapor = engine.Curves.Bubble.Split(temperature, scratch.LogK);
        double incipientLiquid = engine.Curves.Dew.Split(temperature, scratch.OtherLogK);
        double bubble = Math.Log(engine.Curves.Bubble.PressureAt(temperature));
        double dew = Math.Log(engine.Curves.Dew.PressureAt(temperature));
        double weight = bubble > dew ? Math.Max(0, Math.Min(1, (Math.Log(pressure) - dew) / (bubble - dew))) : 0.5;
        for (int i = 0; i < scratch.LogK.Length; i++)
        {
            scratch.LogK[i] = (weight * scratch.LogK[i]) + ((1 - weight) * scratch.OtherLogK[i]);
        }

        double beta = RachfordRice.VaporFraction(engine.Composition, scratch.LogK);
        beta = Math.Max(Inside, Math.Min(1 - Inside, beta));
        Densities(engine, temperature, beta, incipientLiquid, incipientVapor, out double liquid, out double vapor);
        Set(engine, scratch, temperature, beta, liquid, vapor);
    }

    /// <summary>At a temperature and a molar volume between those of the bubble and the dew point.</summary>
    public static void AtVolume(MixtureEngine engine, MixtureScratch scratch, double temperature, double volume)
    {
        const int rounds = 4;
        double incipientVapor = engine.Curves.Bubble.Split(temperature, scratch.LogK);
        double incipientLiquid = engine.Curves.Dew.Split(temperature, scratch.OtherLogK);
        double beta = 0.5;
        for (int k = 0; k < rounds; k++)
        {
            Densities(engine, temperature, beta, incipientLiquid, incipientVapor, out double l, out double v);
            beta = Math.Max(0, Math.Min(1, (volume - (1 / l)) / ((1 / v) - (1 / l))));
        }

        AtFraction(engine, scratch, temperature, beta);
    }

    /// <summary>Multiplies all K factors by what makes the vapor fraction consistent with them: a change of the pressure does that.</summary>
    private static void Scale(double[] z, double[] logK, double beta)
    {
        const int rounds = 30;
        double shift = 0;
        for (int round = 0; round < rounds; round++)
        {
            double value = 0, slope = 0;
            for (int i = 0; i < z.Length; i++)
            {
                double k = Math.Exp(logK[i] + shift);
                double denominator = 1 + (beta * (k - 1));
                value += z[i] * (k - 1) / denominator;
                slope += z[i] * k / (denominator * denominator);
            }

            double step = value / slope;
            shift -= Math.Max(-1, Math.Min(1, step));
            if (Math.Abs(step) < 1e-12)
            {
                break;
            }
        }

        for (int i = 0; i < z.Length; i++)
        {
            logK[i] += shift;
        }
    }

    private static void Densities(
        MixtureEngine engine,
        double temperature,
        double fraction,
        double incipientLiquid,
        double incipientVapor,
        out double liquid,
        out double vapor)
    {
        double bubble = engine.Curves.Bubble.At(temperature).Density / engine.MolarMass;
        double dew = engine.Curves.Dew.At(temperature).Density / engine.MolarMass;
        liquid = bubble * Math.Pow(incipientLiquid / bubble, fraction);
        vapor = incipientVapor * Math.Pow(dew / incipientVapor, fraction);
    }

    private static void Set(MixtureEngine engine, MixtureScratch scratch, double temperature, double fraction, double liquid, double vapor)
    {
        PhaseSplit split = scratch.Split;
        double amount = 0;
        for (int i = 0; i < engine.Composition.Length; i++)
        {
            double k = Math.Exp(scratch.LogK[i]);
            double share = fraction * k / (1 + (fraction * (k - 1)));
            split.VaporAmounts[i] = engine.Composition[i] * share;
            amount += split.VaporAmounts[i];
        }

        split.Temperature = temperature;
        split.LiquidVolume = (1 - amount) / liquid;
        split.VaporVolume = amount / vapor;
    }
}
