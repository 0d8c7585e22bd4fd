using System;
using Refrigerant.Recovery.Fluids.Mixtures;

namespace Refrigerant.Recovery.Processes;

/// <summary>Draws vapor off a vessel of a blend, with the amounts of all components: dn_i/dm = y_i/M_vapor by the midpoint rule.</summary>
internal sealed class VaporDraw
{
    private readonly TrackedVessel _vessel;
    private readonly double _volume;
    private readonly double[] _amounts;
    private readonly double[] _half;
    private readonly double[] _start;
    private readonly double[] _drawn;

    public VaporDraw(MixtureModel model, double volume, double mass, double temperature)
    {
        _vessel = new TrackedVessel(model);
        _volume = volume;
        int n = _vessel.Count;
        _amounts = new double[n];
        _half = new double[n];
        _drawn = new double[n];
        for (int i = 0; i < n; i++)
        {
            _amounts[i] = model.Composition[i].MoleFraction * mass / model.MolarMass;
        }

        _start = (double[])_amounts.Clone();
        Mass = mass;
        Temperature = temperature;
        _vessel.SolveAtTemperature(_amounts, volume, temperature);
    }

    /// <summary>What is left, kg.</summary>
    public double Mass { get; private set; }

    /// <summary>K.</summary>
    public double Temperature { get; private set; }

    /// <summary>Pa.</summary>
    public double Pressure => _vessel.Pressure;

    public bool HasLiquid => _vessel.Liquid.Amount > 0;

    /// <summary>Largest share of any component that is neither in the vessel's phases nor drawn.</summary>
    public double LargestImbalance { get; private set; }

    public void Draw(double mass, double temperature)
    {
        double middle = 0.5 * (Temperature + temperature);
        Take(_amounts, _half, 0.5 * mass, null);
        _vessel.SolveAtTemperature(_half, _volume, middle);
        Take(_amounts, _amounts, mass, _drawn);
        _vessel.SolveAtTemperature(_amounts, _volume, temperature);
        Mass -= mass;
        Temperature = temperature;
        for (int i = 0; i < _amounts.Length; i++)
        {
            double inside = (HasLiquid ? _vessel.Liquid.Amount * _vessel.LiquidFractions[i] : 0) + (_vessel.Vapor.Amount * _vessel.VaporFractions[i]);
            LargestImbalance = Math.Max(LargestImbalance, Math.Abs(inside + _drawn[i] - _start[i]) / _start[i]);
        }
    }

    public double[] LiquidMassFractions() => MassFractions(_vessel.LiquidFractions);

    public double[] VaporMassFractions() => MassFractions(_vessel.VaporFractions);

    private double[] MassFractions(ReadOnlySpan<double> x)
    {
        var mass = new double[x.Length];
        double total = 0;
        for (int i = 0; i < x.Length; i++)
        {
            mass[i] = x[i] * _vessel.MolarMass(i);
            total += mass[i];
        }

        for (int i = 0; i < x.Length; i++)
        {
            mass[i] /= total;
        }

        return mass;
    }

    private void Take(double[] from, double[] to, double mass, double[]? drawn)
    {
        ReadOnlySpan<double> y = _vessel.VaporFractions;
        double molarMass = 0;
        for (int i = 0; i < y.Length; i++)
        {
            molarMass += y[i] * _vessel.MolarMass(i);
        }

        for (int i = 0; i < y.Length; i++)
        {
            // The last of a volatile component leaves with the vapor, not more than it.
            double part = Math.Min(mass * y[i] / molarMass, from[i]);
            to[i] = from[i] - part;
            if (drawn is not null)
            {
                drawn[i] += part;
            }
        }
    }
}
