using System;

namespace Refrigerant.Recovery.Flow;

/// <summary>What warms suction gas between the appliance and the compressor's cylinder; plain SI doubles.</summary>
/// <remarks>
/// T_s = T + (T_air − T)·(1 − e^(−UA/(ṁ·cp))), an exchanger whose other side is at one temperature (any heat-transfer text); the density falls
/// by T/T_s at the same pressure.
/// </remarks>
internal readonly record struct SuctionWarming
{
    /// <param name="temperature">Temperature of the gas at the appliance, K.</param>
    /// <param name="airTemperature">Temperature of the air, or of what else is around it, K.</param>
    /// <param name="conductance">UA of hose and machine, W/K; zero for none.</param>
    /// <param name="heatCapacity">Isobaric heat capacity of the gas, J/(kg·K).</param>
    public SuctionWarming(double temperature, double airTemperature, double conductance, double heatCapacity)
    {
        Temperature = temperature;
        AirTemperature = airTemperature;
        Conductance = conductance;
        HeatCapacity = heatCapacity;
    }

    public double Temperature { get; }

    public double AirTemperature { get; }

    public double Conductance { get; }

    public double HeatCapacity { get; }

    /// <summary>Whether there is any.</summary>
    public bool Counts => Conductance > 0 && AirTemperature != Temperature;

    /// <summary>Temperature at the compressor's cylinder for a mass flow, K; that of the air at rest.</summary>
    public double TemperatureAt(double massFlow) => !Counts ? Temperature
        : massFlow > 0 ? AirTemperature + ((Temperature - AirTemperature) * Math.Exp(-Conductance / (massFlow * HeatCapacity)))
        : AirTemperature;
}
