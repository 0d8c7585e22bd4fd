using System;

namespace Refrigerant.Recovery.Estimation;

/// <summary>What the machine draws as it was told, by the pressure at its inlet alone: whatever is in the appliance.</summary>
internal sealed class ToldMachine
{
    /// <summary>Pa: below it nothing is told apart.</summary>
    private const double LeastPressure = 1000;

    private readonly SaturationTable _table;
    private readonly EstimatorPrior _prior;

    public ToldMachine(SaturationTable table, EstimatorPrior prior)
    {
        _table = table;
        _prior = prior;
    }

    /// <summary>Flow of saturated vapor that warms on its way, kg/s.</summary>
    /// <param name="suction">Absolute pressure at the inlet, Pa.</param>
    /// <param name="air">Temperature of the air, K.</param>
    public double Flow(double suction, double air)
    {
        ReducedParameters told = _prior.Typical;
        double pressure = Math.Max(LeastPressure, suction);
        double temperature = _table.DewTemperature(pressure);
        _table.At(temperature, out SaturationValues at);
        double density = at.VaporDensity * temperature / (temperature + (_prior.Mean[StateIndex.Warming] * Math.Max(0, air - temperature)));
        return density * told.Displacement * ReducedModel.Efficiency(pressure, in told);
    }
}
