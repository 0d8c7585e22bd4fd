using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Simulation.Vessels;

/// <summary>How fast refrigerant leaves oil.</summary>
internal sealed class OilProcess
{
    private readonly double _mass;
    private readonly double _molarRatio;
    private readonly double _time;

    public OilProcess(PropertyModel model, ApplianceOil oil)
    {
        _mass = oil.Mass.Kilograms;
        _molarRatio = model.MolarMass / oil.EffectiveMolarMass;
        _time = oil.OutgassingTime.Seconds;
    }

    /// <summary>kg/s out of the oil.</summary>
    public double Release(double saturation, double pressure, double temperature, double dissolved)
    {
        double x = pressure / saturation;
        double equilibrium = x < 1 ? _mass * _molarRatio * x / (1 - x) : double.PositiveInfinity;
        return dissolved > equilibrium ? (dissolved - equilibrium) / _time : 0;
    }
}
