using System;
using System.Linq;
using Refrigerant.Recovery.Fluids.Mixtures;

namespace Refrigerant.Recovery.Tests.Fluids.Mixtures;

/// <summary>A tracked vessel on a random walk: heat goes in or out, vapor is drawn or put in, now this way for a while and now that.</summary>
internal sealed class VesselWalk
{
    /// <summary>m³.</summary>
    public const double Volume = 0.02;

    private const int Leg = 40;
    private const double WarmEnd = 420, HighestPressure = 2e7, LowestPressure = 100;

    private readonly MixtureModel _model;
    private readonly Random _random;
    private readonly double[] _amounts;
    private double _drift;
    private double _heat;
    private int _steps;

    public VesselWalk(MixtureModel model, int seed)
    {
        _model = model;
        _random = new Random(seed);
        double low = model.Range.MinimumTemperature + 10, high = model.Range.MaximumSaturationTemperature - 5;
        double temperature = low + ((high - low) * _random.NextDouble());
        double density = model.SaturationAtTemperature(temperature).Bubble.Density * Math.Exp(-5 * _random.NextDouble());
        _amounts = [.. model.Composition.Select(component => component.MoleFraction * density * Volume / model.MolarMass)];
        Vessel = new TrackedVessel(model);
        Vessel.SolveAtTemperature(_amounts, Volume, temperature);
        Energy = Vessel.Energy;
    }

    public TrackedVessel Vessel { get; }

    /// <summary>The energy that was asked for, J.</summary>
    public double Energy { get; private set; }

    /// <summary>What an energy is compared with, J.</summary>
    public double EnergyScale => _amounts.Sum() * 8.314 * 300;

    /// <summary>One step, of amounts and of energy by about a share of what there is; back where it would leave the model's range.</summary>
    public void Step(double share)
    {
        if (_steps++ % Leg == 0)
        {
            _drift = ((2 * _random.NextDouble()) - 1) * share;
            _heat = ((2 * _random.NextDouble()) - 1) * share;
        }

        bool isCold = Vessel.Temperature < _model.Range.MinimumTemperature, isWarm = Vessel.Temperature > WarmEnd;
        _heat = isCold ? Math.Abs(_heat) : isWarm ? -Math.Abs(_heat) : _heat;
        _drift = Vessel.Pressure > HighestPressure ? -Math.Abs(_drift) : Vessel.Pressure < LowestPressure ? Math.Abs(_drift) : _drift;
        _heat = Vessel.Pressure > HighestPressure ? -Math.Abs(_heat) : _heat;
        bool hasVapor = Vessel.Vapor.Amount > 0;
        ReadOnlySpan<double> fractions = hasVapor ? Vessel.VaporFractions : Vessel.LiquidFractions;
        PhaseContent content = hasVapor ? Vessel.Vapor : Vessel.Liquid;
        double moved = _drift * (0.5 + _random.NextDouble()) * _amounts.Sum();
        for (int i = 0; i < _amounts.Length; i++)
        {
            if (_amounts[i] + (moved * fractions[i]) < 0)
            {
                moved = 0;
            }
        }

        for (int i = 0; i < _amounts.Length; i++)
        {
            _amounts[i] += moved * fractions[i];
        }

        Energy += (moved * content.Enthalpy * content.Mass / content.Amount) + (_heat * (0.5 + _random.NextDouble()) * _amounts.Sum() * 8.314 * 0.8 * Vessel.Temperature);
        Vessel.SolveAtEnergy(_amounts, Volume, Energy);
    }
}
