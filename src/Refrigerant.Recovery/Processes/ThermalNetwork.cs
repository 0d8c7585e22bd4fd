using Refrigerant.Recovery.Equipment;

namespace Refrigerant.Recovery.Processes;

/// <summary>Heat between surroundings, water, metal and refrigerant of an appliance; plain SI doubles.</summary>
/// <remarks>
/// Surroundings — outer conductance — metal — inner conductance — refrigerant, and water — its conductance — metal. Metal and
/// standing water store heat; moving water enters at a constant temperature and gives up its share by the effectiveness
/// 1 − exp(−UA/(ṁ·cp)) of an exchanger whose other side is at one temperature (any heat-transfer text).
/// </remarks>
internal sealed class ThermalNetwork
{
    /// <summary>Specific heat of liquid water near 15 °C, J/(kg·K), from memory.</summary>
    private const double WaterHeatCapacity = 4190;

    /// <summary>Resistance from metal to boiling refrigerant where none is given, K/W: common practice, no source.</summary>
    private const double TypicalMetalResistance = 0.002;

    private readonly double _outer;
    private readonly double _inner;
    private readonly double _water;
    private readonly double _surroundings;
    private readonly double _waterInlet;
    private readonly double _dryFactor;
    private readonly bool _direct;

    public ThermalNetwork(Appliance appliance)
    {
        double area = appliance.HeatArea.SquareMeters;
        _outer = appliance.OuterConductance;
        _surroundings = appliance.SurroundingsKelvin;
        _dryFactor = appliance.DryResistanceFactor;
        MetalCapacity = appliance.MetalCapacity;
        MetalTemperature = appliance.Temperature.Kelvins;
        HasWater = appliance.Water is not null;
        _direct = MetalCapacity == 0 && !HasWater && appliance.MetalResistance is null;
        _inner = appliance.MetalResistance is { } given ? area / given.SquareMeterKelvinsPerWatt : 1 / TypicalMetalResistance;
        if (appliance.Water is TubeWater water)
        {
            double conductance = area / water.Resistance.SquareMeterKelvinsPerWatt;
            if (water.IsMoving)
            {
                double flow = water.Flow.KilogramsPerSecond * WaterHeatCapacity;
                _water = flow * (1 - System.Math.Exp(-conductance / flow));
                _waterInlet = water.Temperature.Kelvins;
            }
            else
            {
                _water = conductance;
                WaterCapacity = water.Mass.Kilograms * WaterHeatCapacity;
            }
        }
    }

    /// <summary>Heat capacity of the metal, J/K; zero where it does not count.</summary>
    public double MetalCapacity { get; }

    /// <summary>Heat capacity of standing water, J/K; zero where there is none.</summary>
    public double WaterCapacity { get; }

    /// <summary>Whether there is water that can freeze.</summary>
    public bool HasWater { get; }

    /// <summary>Whether the metal now touches gas only.</summary>
    public bool IsDry { get; set; }

    /// <summary>Heat flow into the refrigerant, W.</summary>
    public double HeatToRefrigerant { get; private set; }

    /// <summary>Heat flow from outside (surroundings, moving water) into metal and refrigerant, W.</summary>
    public double HeatFromOutside { get; private set; }

    /// <summary>Heat flow from standing water into the metal, W.</summary>
    public double HeatFromStandingWater { get; private set; }

    /// <summary>Temperature of the metal, K.</summary>
    public double MetalTemperature { get; private set; }

    /// <summary>Conductance from the metal to the refrigerant as it is now, W/K.</summary>
    public double InnerConductance => IsDry ? _inner / _dryFactor : _inner;

    /// <summary>Evaluates the heat flows. Without heat capacity the metal takes the temperature that balances them.</summary>
    public void Solve(double refrigerant, double metal, double standingWater)
    {
        double water = WaterCapacity > 0 ? standingWater : _waterInlet;
        if (_direct)
        {
            MetalTemperature = refrigerant;
            HeatToRefrigerant = _outer * (_surroundings - refrigerant);
            HeatFromOutside = HeatToRefrigerant;
            HeatFromStandingWater = 0;
            return;
        }

        double inner = InnerConductance;
        MetalTemperature = MetalCapacity > 0
            ? metal
            : ((_outer * _surroundings) + (_water * water) + (inner * refrigerant)) / (_outer + _water + inner);
        double fromWater = _water == 0 ? 0 : _water * (water - MetalTemperature);
        double fromAir = _outer == 0 ? 0 : _outer * (_surroundings - MetalTemperature);
        HeatToRefrigerant = inner * (MetalTemperature - refrigerant);
        HeatFromStandingWater = WaterCapacity > 0 ? fromWater : 0;
        HeatFromOutside = fromAir + (WaterCapacity > 0 ? 0 : fromWater);
    }
}
