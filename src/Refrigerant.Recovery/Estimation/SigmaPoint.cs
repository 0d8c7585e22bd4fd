namespace Refrigerant.Recovery.Estimation;

/// <summary>A point of a filter's distribution as the reduced model takes it.</summary>
internal struct SigmaPoint
{
    public ReducedState State;
    public ReducedParameters Parameters;

    /// <summary>What the gauge shows beyond the pressure at it, Pa.</summary>
    public double GaugeError;

    /// <summary>From a state vector: plain states as they are, the values of those that are logarithms beside it.</summary>
    public static SigmaPoint From(double[] states, double[] values, in ReducedParameters typical, SaturationTable table)
    {
        SigmaPoint point = default;
        point.Parameters = typical;
        ref ReducedParameters to = ref point.Parameters;
        to.Charge = values[StateIndex.Charge];
        to.Volume = values[StateIndex.Volume];
        to.OuterConductance = values[StateIndex.Outer];
        to.MetalCapacity = values[StateIndex.Metal];
        to.InnerConductance = values[StateIndex.Inner];
        to.Displacement = values[StateIndex.Displacement];
        to.HoseResistance = values[StateIndex.Hose];
        to.Clearance = values[StateIndex.Clearance];
        to.WetShare = values[StateIndex.WetShare];
        to.Warming = Bounded(states[StateIndex.Warming], 0, 1);
        to.OilCapacity = values[StateIndex.OilCapacity];
        to.OilTime = values[StateIndex.OilTime];
        to.DischargePressure = table.BubblePressure(states[StateIndex.Condensing]);
        point.State.Dissolved = values[StateIndex.Dissolved];
        point.State.Delivered = states[StateIndex.Delivered];
        point.State.MetalTemperature = states[StateIndex.MetalTemperature];
        point.State.WetTemperature = states[StateIndex.WetTemperature];
        point.State.Temperature = states[StateIndex.Temperature];
        point.GaugeError = states[StateIndex.GaugeBias] + states[StateIndex.GaugeDrift];
        return point;
    }

    private static double Bounded(double value, double low, double high) => value < low ? low : value > high ? high : value;
}
