using System;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Simulation.Contents;

namespace Refrigerant.Recovery.Simulation.Vessels;

/// <summary>The vapor above a pool of liquid, with a pressure of its own; plain SI doubles.</summary>
/// <remarks>
/// <para>
/// Its volume is what the liquid leaves, V_v = V − m_l/ρ′(T_l). It gains what is pushed in and what boils off, and loses heat: by film condensation to dry
/// metal, UA·(T_sat(p) − T_metal), by conduction into the liquid's surface layer, k·A·(T_sat(p) − T_l)/√(π·a·t), with t the time of contact (any heat-transfer
/// text; a half-space whose surface is kept at one temperature). First it gives up its superheat; then a mist forms that rains onto the liquid. While the
/// liquid sinks it does work on it, p·dV_v.
/// </para>
/// <para>A blend counts with its composition as charged: its vapor on the dew curve, its condensation at the bubble temperature, the liquid's.</para>
/// </remarks>
internal sealed class VaporSpace : Vessel
{
    /// <summary>Time in which a mist rains down, s: common practice, no source.</summary>
    private const double RainTime = 2;

    /// <summary>Thermal conductivity of liquid refrigerants near room temperature, W/(m·K): 0.06 to 0.1, from memory.</summary>
    private const double Conductivity = 0.08;

    /// <summary>Time of contact at the start, s: so that the flow of heat is finite.</summary>
    private const double FirstContact = 1;

    private readonly PropertyModel _model;
    private readonly Content _content;
    private readonly LiquidPool _pool;
    private readonly double _totalVolume;
    private readonly double _surface;
    private readonly double[] _total = new double[1];
    private readonly double[] _fractions;
    private readonly double _lowestSaturation;
    private readonly double _highestSaturation;
    private int _clock;
    private double _boil;
    private double _surfaceHeat;

    /// <param name="name">Its name.</param>
    /// <param name="model">The refrigerant.</param>
    /// <param name="components">Number of masses.</param>
    /// <param name="totalVolume">Volume of vapor and liquid, m³.</param>
    /// <param name="surface">Free surface of the liquid, m².</param>
    /// <param name="pool">The liquid.</param>
    /// <param name="shell">The metal around both.</param>
    public VaporSpace(string name, PropertyModel model, int components, double totalVolume, double surface, LiquidPool pool, MetalShell shell)
        : base(name, components)
    {
        _model = model;
        _content = Content.For(model, tracked: false);
        _pool = pool;
        _totalVolume = totalVolume;
        _surface = surface;
        Shell = shell;
        _fractions = new double[components > 1 ? components : 0];
        _lowestSaturation = model.SaturationAtTemperature(model.Range.MinimumTemperature).Bubble.Pressure;
        _highestSaturation = model.SaturationAtTemperature(model.Range.MaximumSaturationTemperature).Dew.Pressure;
    }

    public MetalShell Shell { get; }

    /// <summary>Oil beside it; null for none.</summary>
    public OilSump? Oil { get; init; }

    /// <summary>Mass fractions as charged, of what oil gives off; empty where the composition is not followed.</summary>
    public double[] AsCharged { get; init; } = [];

    /// <summary>Temperature at which its vapor condenses, K.</summary>
    public double CondensingTemperature { get; private set; }

    public override double Pressure => _content.Pressure;

    public override double Temperature => _content.Temperature;

    public override double VaporDensity => _content.VaporDensity;

    public override double VaporEnthalpy => _content.VaporEnthalpy;

    public override double LiquidEnthalpy => _pool.LiquidEnthalpy;

    public override ReadOnlySpan<double> VaporComposition => _fractions;

    public override ReadOnlySpan<double> LiquidComposition => _fractions;

    public override double Mass => _content.Mass;

    public override double LiquidMass => _content.LiquidMass;

    public override void AddStates(SlotLayout layout)
    {
        base.AddStates(layout);
        Shell.AddStates(layout, Name);
        Oil?.AddStates(layout, Name);
        _clock = layout.State(Name, "time of contact");
    }

    public override void SetScales(double[] scale)
    {
        base.SetScales(scale);
        Shell.SetScales(scale);
        Oil?.SetScales(scale, MassScale);
        scale[_clock] = double.PositiveInfinity;
    }

    public override bool Solve(double[] state, in SimulationInputs inputs)
    {
        double volume = _totalVolume - _pool.Volume;
        _total[0] = SumOfMasses(state);
        if (!(volume > 0) || !_content.Solve(_total, 0, volume, state[Energy]))
        {
            return false;
        }

        for (int i = 0; i < _fractions.Length; i++)
        {
            _fractions[i] = state[First + i] / _total[0];
        }

        double pressure = _content.Pressure;
        _pool.PressureAbove = pressure;
        CondensingTemperature = pressure > _highestSaturation || pressure < _lowestSaturation
            ? _pool.Temperature
            : _model.SaturationAtPressure(pressure).Bubble.Temperature;
        _boil = _pool.BoilOff(CondensingTemperature);
        double diffusivity = Conductivity / (_pool.LiquidDensity * _pool.HeatCapacity);
        double contact = Math.Max(0, state[_clock]) + FirstContact;
        _surfaceHeat = Math.Max(0, CondensingTemperature - _pool.Temperature) * Conductivity * _surface / Math.Sqrt(Math.PI * diffusivity * contact);
        Shell.CondensingTemperature = CondensingTemperature;
        return Shell.Solve(state, _pool.Temperature, _content.Temperature, _pool.Volume / _totalVolume, inputs)
            && (Oil is null || Oil.Solve(state, pressure, Shell.DryTemperature, inputs));
    }

    public override void Derive(double[] derivatives)
    {
        double rain = _content.LiquidMass / RainTime;
        Give(derivatives, -rain, _content.LiquidEnthalpy, _fractions);
        _pool.Give(derivatives, rain, _content.LiquidEnthalpy, _fractions);
        double vapor = _pool.Saturation.Dew.Enthalpy;
        Give(derivatives, _boil, vapor, _pool.LiquidComposition);
        _pool.Give(derivatives, -_boil, vapor, _pool.LiquidComposition);
        derivatives[Energy] += Shell.HeatToVapor - _surfaceHeat;
        derivatives[_pool.Energy] += Shell.HeatToLiquid + _surfaceHeat;
        double outside = Shell.HeatFromOutside;
        Shell.Derive(derivatives);
        if (Oil is OilSump oil)
        {
            outside += oil.HeatFromOutside;
            oil.Derive(derivatives);
            if (!Shell.TakeHeat(derivatives, oil.HeatFromAround))
            {
                derivatives[Energy] -= oil.HeatFromAround;
            }

            Give(derivatives, oil.Release, oil.ReleaseEnthalpy, AsCharged);
        }

        derivatives[OutsideHeat] += outside;
        derivatives[_clock] = 1;
    }

    /// <summary>The work p·dV_v on the sinking liquid, once all flows are known: dV_l = dm/ρ + m·v·dT with m·c·dT = dU − p·dV_l − u·dm.</summary>
    public override void Finish(double[] derivatives)
    {
        double mass = 0;
        for (int i = 0; i < Components; i++)
        {
            mass += derivatives[_pool.First + i];
        }

        double slope = _pool.VolumeSlope / _pool.HeatCapacity;
        double pressure = _content.Pressure;
        double change = ((mass / _pool.LiquidDensity) + (slope * (derivatives[_pool.Energy] - (_pool.SpecificEnergy * mass)))) / (1 + (pressure * slope));
        derivatives[_pool.Energy] -= pressure * change;
        derivatives[Energy] += pressure * change;
    }

    public override double TotalMass(double[] state) => SumOfMasses(state) + (Oil?.Dissolved(state) ?? 0);

    public override double ComponentMass(double[] state, int component) => state[First + component]
        + (Oil is null ? 0 : (Components == 1 ? 1 : AsCharged[component]) * Oil.Dissolved(state));

    public override double Stored(double[] state) => state[Energy] + Shell.Stored(state) + (Oil?.Stored(state) ?? 0);
}
