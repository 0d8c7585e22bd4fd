using System;
using Refrigerant.Recovery.Equipment;

namespace Refrigerant.Recovery.Simulation.Vessels;

/// <summary>The metal of an appliance in two parts, wetted by liquid and dry, with water in tubes, the air around it and a heater.</summary>
/// <remarks>
/// The wetted share f of the metal follows the share λ of the volume that liquid fills (as in an upright vessel of one cross-section) with the time
/// τ in which a film drains: df/dt = (λ − f)/τ. With E_w, E_d the energies of the parts, C the heat capacity, T_w = E_w/(C·f), T_d = E_d/(C·(1 − f)):
/// dE_w/dt = f·(G_o·(T_air − T_w) + G_water·(T_water − T_w) + P − G_b·(T_w − T_liquid)) + C·df/dt·T*, dE_d/dt alike with 1 − f, G_b/k in place of G_b and −C·df/dt·T*;
/// T* = T_w while metal dries, T_d while it is wetted: drying metal takes its energy along. k is <see cref="Appliance.DryResistanceFactor"/>.
/// Moving water gives its share by the effectiveness 1 − exp(−UA/(ṁ·cp)) of an exchanger whose other side is at one temperature (any heat-transfer text).
/// Without heat capacity each part takes the temperature that balances its heat flows, and f = λ.
/// </remarks>
internal sealed class MetalShell : Shell
{
    /// <summary>Freezing point of water, K.</summary>
    public const double FreezingPoint = 273.15;

    /// <summary>Specific heat of liquid water near 15 °C, J/(kg·K), from memory.</summary>
    private const double WaterHeatCapacity = 4190;

    /// <summary>Time in which a film of liquid drains off a wall, s: common practice, no source.</summary>
    private const double DrainTime = 10;

    /// <summary>Least share of either part, so that its temperature exists.</summary>
    private const double LeastShare = 1e-3;

    /// <summary>Wetted shares below this weigh less and less in the coldest temperature of a surface.</summary>
    private const double FadingShare = 5e-3;

    private readonly double _capacity;
    private readonly double _outer;
    private readonly double _boiling;
    private readonly double _dryConductance;
    private readonly double _surroundings;
    private readonly double _waterConductance;
    private readonly double _waterInlet;
    private readonly double _waterCapacity;
    private readonly bool _hasMetal;
    private readonly bool _hasStandingWater;
    private readonly bool _direct;
    private readonly bool _warmedByCrankcase;
    private readonly double _startTemperature;
    private int _wet;
    private int _dry;
    private int _wetted;
    private int _water;
    private double _share;
    private double _drying;
    private double _wetHeat;
    private double _dryHeat;
    private double _fromWater;

    /// <param name="appliance">The appliance.</param>
    /// <param name="part">Share of its metal, air, water and heat that belongs to this vessel.</param>
    public MetalShell(Appliance appliance, double part)
    {
        _outer = part * appliance.OuterConductance;
        _surroundings = appliance.SurroundingsKelvin;
        _capacity = part * appliance.MetalCapacity;
        _boiling = part * appliance.InnerConductance;
        _dryConductance = _boiling / appliance.DryResistanceFactor;
        _hasMetal = _capacity > 0;
        HasWater = appliance.Water is not null;
        _hasStandingWater = appliance.Water is { IsMoving: false };
        _direct = !_hasMetal && !HasWater && appliance.MetalResistance is null;
        _warmedByCrankcase = appliance.Oil is null;
        _startTemperature = appliance.Temperature.Kelvins;
        Part = part;
        if (appliance.Water is TubeWater water)
        {
            double conductance = part * appliance.HeatArea.SquareMeters / water.Resistance.SquareMeterKelvinsPerWatt;
            if (water.IsMoving)
            {
                double flow = part * water.Flow.KilogramsPerSecond * WaterHeatCapacity;
                _waterConductance = flow * (1 - Math.Exp(-conductance / flow));
                _waterInlet = water.Temperature.Kelvins;
            }
            else
            {
                _waterConductance = conductance;
                _waterCapacity = part * water.Mass.Kilograms * WaterHeatCapacity;
            }
        }
    }

    /// <summary>Share of the appliance's metal that this is.</summary>
    public double Part { get; }

    /// <summary>Whether there is water that can freeze.</summary>
    public bool HasWater { get; }

    /// <summary>Conductance of film condensation on dry metal, W/K; it counts, besides that of gas, while the vapor's saturation temperature is above the metal's.</summary>
    public double CondensingConductance { get; init; }

    /// <summary>Temperature at which vapor condenses on it, K; set by a vessel whose vapor has a pressure of its own.</summary>
    public double CondensingTemperature { get; set; }

    /// <summary>Temperature of the surface that water touches, K: of the wetted metal, and as the liquid goes of the dry one.</summary>
    public double ColdestSurface => DryTemperature + ((WetTemperature - DryTemperature) * _share / (_share + FadingShare));

    /// <summary>Temperature of standing water, K; of its inlet where it moves, of the metal where there is none.</summary>
    public double WaterTemperature { get; private set; }

    /// <summary>Wetted share of the metal.</summary>
    public double WettedShare => _share;

    public override void AddStates(SlotLayout layout, string vessel)
    {
        if (_hasMetal)
        {
            _wet = layout.State(vessel, "wetted metal, energy");
            _dry = layout.State(vessel, "dry metal, energy");
            _wetted = layout.State(vessel, "wetted share");
        }

        if (_hasStandingWater)
        {
            _water = layout.State(vessel, "standing water, temperature");
        }
    }

    public override void SetScales(double[] scale)
    {
        if (_hasMetal)
        {
            scale[_wet] = 1e-2 * _capacity * _startTemperature;
            scale[_dry] = 1e-2 * _capacity * _startTemperature;
            scale[_wetted] = 0.1;
        }

        if (_hasStandingWater)
        {
            scale[_water] = 1;
        }
    }

    /// <summary>Writes a start.</summary>
    public void Initialize(double[] state, double wet, double dry, double wettedShare, double water)
    {
        if (_hasMetal)
        {
            double share = Within(wettedShare);
            state[_wetted] = share;
            state[_wet] = _capacity * share * wet;
            state[_dry] = _capacity * (1 - share) * dry;
        }

        if (_hasStandingWater)
        {
            state[_water] = water;
        }

        WetTemperature = wet;
        DryTemperature = dry;
    }

    public override bool Solve(double[] state, double liquid, double vapor, double level, in SimulationInputs inputs)
    {
        double air = inputs.AirTemperature ?? _surroundings;
        double outer = _outer * inputs.FanFactor;
        double heater = Part * (inputs.HeaterPower + (_warmedByCrankcase ? inputs.CrankcaseHeaterPower : 0));
        double target = Within(level);
        if (_direct)
        {
            WetTemperature = liquid;
            DryTemperature = vapor;
            WaterTemperature = liquid;
            _share = target;
            HeatToLiquid = level * ((outer * (air - liquid)) + heater);
            HeatToVapor = (1 - level) * ((outer * (air - vapor)) + heater);
            HeatFromOutside = HeatToLiquid + HeatToVapor;
            return true;
        }

        double waterConductance = _waterConductance * inputs.WaterFactor;
        WaterTemperature = _hasStandingWater ? state[_water] : HasWater ? _waterInlet : liquid;
        if (_hasMetal)
        {
            _share = Clamp(state[_wetted]);
            WetTemperature = state[_wet] / (_capacity * _share);
            DryTemperature = state[_dry] / (_capacity * (1 - _share));
            if (!(WetTemperature > 0) || !(DryTemperature > 0))
            {
                return false;
            }

            _drying = (target - _share) / DrainTime;
        }
        else
        {
            _share = target;
            double fixedHeat = (outer * air) + (waterConductance * WaterTemperature) + heater;
            WetTemperature = (fixedHeat + (_boiling * liquid)) / (outer + waterConductance + _boiling);
            DryTemperature = (fixedHeat + (_dryConductance * vapor)) / (outer + waterConductance + _dryConductance);
        }

        double rest = 1 - _share;
        HeatToLiquid = _share * _boiling * (WetTemperature - liquid);
        double film = _hasMetal ? CondensingConductance * Math.Max(0, CondensingTemperature - DryTemperature) : 0;
        HeatToVapor = rest * ((_dryConductance * (DryTemperature - vapor)) - film);
        double wetFromWater = _share * waterConductance * (WaterTemperature - WetTemperature);
        double dryFromWater = rest * waterConductance * (WaterTemperature - DryTemperature);
        double wetFromAir = _share * ((outer * (air - WetTemperature)) + heater);
        double dryFromAir = rest * ((outer * (air - DryTemperature)) + heater);
        _fromWater = wetFromWater + dryFromWater;
        HeatFromOutside = wetFromAir + dryFromAir + (_hasStandingWater ? 0 : _fromWater);
        double moved = _capacity * _drying * (_drying < 0 ? WetTemperature : DryTemperature);
        _wetHeat = wetFromAir + wetFromWater - HeatToLiquid + moved;
        _dryHeat = dryFromAir + dryFromWater - HeatToVapor - moved;
        return true;
    }

    public override void Derive(double[] derivatives)
    {
        if (_direct)
        {
            return;
        }

        if (_hasMetal)
        {
            derivatives[_wet] = _wetHeat;
            derivatives[_dry] = _dryHeat;
            derivatives[_wetted] = _drying;
        }

        if (_hasStandingWater)
        {
            derivatives[_water] = -_fromWater / _waterCapacity;
        }
    }

    public override bool TakeHeat(double[] derivatives, double heat)
    {
        if (_hasMetal)
        {
            derivatives[_dry] -= heat;
        }

        return _hasMetal;
    }

    public override double Stored(double[] state) =>
        (_hasMetal ? state[_wet] + state[_dry] : 0) + (_hasStandingWater ? _waterCapacity * state[_water] : 0);

    private static double Within(double level) => Math.Min(1 - LeastShare, Math.Max(LeastShare, level));

    /// <summary>A trial state may lie a little outside.</summary>
    private static double Clamp(double share) => Math.Min(1 - (0.5 * LeastShare), Math.Max(0.5 * LeastShare, share));
}
