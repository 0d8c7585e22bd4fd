using System;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Processes;

/// <summary>The balances of a push-pull; plain SI doubles.</summary>
/// <remarks>
/// Volume balance at the appliance: liquid out = φ·vapor pushed in, Q = φ·S·η(r)·ρ_v(cylinder)/ρ_v(appliance). Hydraulics of the liquid
/// line: p_appliance − p_cylinder = Δp(Q). Both give Q and the pressure that the machine builds up. Where the appliance is so warm that its
/// saturation pressure drives more than that, the liquid flows by itself, flashing: the difference that drives it is then taken as at
/// most a tenth of the saturation pressure, as flashing liquid chokes (estimate, common practice, no source).
/// </remarks>
internal sealed class PushPullSystem : OdeSystem
{
    public const int Mass = 0, Energy = 1, Metal = 2, Water = 3, CylinderMass = 4, CylinderEnergy = 5, CylinderWall = 6;
    public const int Liquid = 7, Vapor = 8, LiquidEnergy = 9, VaporEnergy = 10, Work = 11, HeatIn = 12, CylinderHeat = 13, FreeVolume = 14, LiquidVolume = 15;
    public const int HeelEvent = 0, CylinderFullEvent = 1, CutoutEvent = 2, StallEvent = 3;

    private const int Controlled = 7;
    private const int MaximumIterations = 60;
    private const double Tolerance = 1e-8;
    private const double FlashingShare = 0.1;
    private const double SmallShare = 1e-4;

    /// <summary>Where moving the liquid at the present rate would take longer than this, s, nothing drives it.</summary>
    private const double StallTime = 864_000;

    private readonly VesselTracker _vessel;
    private readonly CylinderProcess _cylinder;
    private readonly MachineProcess _machine;
    private readonly SuctionLine _suction;
    private readonly Line _liquidLine;
    private readonly ThermalNetwork _network;
    private readonly PropertyModel _model;
    private readonly TrajectoryRecorder _recorder;
    private readonly double _volume;
    private readonly double _liquidViscosity;
    private readonly double _vaporViscosity;
    private readonly double _exponent;
    private readonly double _lowestSaturation;
    private readonly double _highestSaturation;
    private readonly double _freeVolumeFlow;
    private readonly double[] _scale = new double[Controlled];
    private double _guess;

    public PushPullSystem(
        PropertyModel model,
        double volume,
        ThermalNetwork network,
        CylinderProcess cylinder,
        MachineProcess machine,
        SuctionLine suction,
        Line liquidLine,
        in SaturationViscosity viscosity,
        double exponent,
        double freeVolumeFlow,
        double[] initial,
        TrajectoryRecorder recorder)
    {
        _model = model;
        _vessel = new VesselTracker(model);
        _volume = volume;
        _network = network;
        _cylinder = cylinder;
        _machine = machine;
        _suction = suction;
        _liquidLine = liquidLine;
        _liquidViscosity = viscosity.Liquid;
        _vaporViscosity = viscosity.Vapor;
        _exponent = exponent;
        _freeVolumeFlow = freeVolumeFlow;
        _guess = freeVolumeFlow;
        _recorder = recorder;
        _lowestSaturation = model.SaturationAtTemperature(model.Range.MinimumTemperature).Bubble.Pressure;
        _highestSaturation = model.SaturationAtTemperature(model.Range.MaximumSaturationTemperature).Dew.Pressure;
        for (int i = 0; i < Controlled; i++)
        {
            _scale[i] = initial[i] == 0 ? 1 : SmallShare * Math.Abs(initial[i]);
        }

        _scale[Energy] = Math.Max(_scale[Energy], SmallShare * initial[Mass] * RecoverySystem.EnergyScale);
        _scale[CylinderEnergy] = Math.Max(_scale[CylinderEnergy], 0.1 * initial[Mass] * RecoverySystem.EnergyScale);
        _scale[CylinderMass] = Math.Max(_scale[CylinderMass], 0.1 * initial[Mass]);
    }

    public double Heel { get; init; }

    public double CylinderLimit { get; init; } = double.PositiveInfinity;

    public double HighPressureCutout { get; init; } = double.PositiveInfinity;

    /// <summary>Share φ of the vapor pushed over that displaces liquid.</summary>
    public double DisplacementShare { get; init; } = 1;

    public double LargestDrive { get; private set; }

    /// <summary>How far the cylinder's pressure fell below the liquid's saturation pressure, as a share of it.</summary>
    public double DeepestFlashing { get; private set; }

    public override int Dimension => LiquidVolume + 1;

    public override int ControlledDimension => Controlled;

    public override int EventCount => StallEvent + 1;

    private double LiquidFlow { get; set; }

    private double VaporFlow { get; set; }

    private double LiquidMass { get; set; }

    private double AppliancePressure { get; set; }

    public override double AbsoluteScale(int index) => _scale[index];

    /// <inheritdoc cref="RecoverySystem.Size"/>
    public override double Size(int index, double[] state) => base.Size(index, state) + index switch
    {
        Energy => RecoverySystem.EnergyScale * state[Mass],
        CylinderEnergy => RecoverySystem.EnergyScale * state[CylinderMass],
        _ => 0,
    };

    public override bool Derivatives(double[] state, double[] derivatives)
    {
        if (!TrySolve(state))
        {
            return false;
        }

        double liquidEnergy = LiquidFlow * _vessel.LiquidEnthalpy;
        double drawnEnergy = VaporFlow * _cylinder.VaporEnthalpy;
        derivatives[Mass] = VaporFlow - LiquidFlow;
        derivatives[Energy] = drawnEnergy + _machine.Power - liquidEnergy + _network.HeatToRefrigerant;
        derivatives[Metal] = _network.MetalCapacity > 0
            ? (_network.HeatFromOutside + _network.HeatFromStandingWater - _network.HeatToRefrigerant) / _network.MetalCapacity
            : 0;
        derivatives[Water] = _network.WaterCapacity > 0 ? -_network.HeatFromStandingWater / _network.WaterCapacity : 0;
        derivatives[CylinderMass] = LiquidFlow - VaporFlow;
        derivatives[CylinderEnergy] = liquidEnergy - drawnEnergy + _cylinder.HeatFromWall;
        derivatives[CylinderWall] = (_cylinder.HeatFromAmbient - _cylinder.HeatFromWall) / _cylinder.WallCapacity;
        derivatives[Liquid] = LiquidFlow;
        derivatives[Vapor] = VaporFlow;
        derivatives[LiquidEnergy] = liquidEnergy;
        derivatives[VaporEnergy] = drawnEnergy;
        derivatives[Work] = _machine.Power;
        derivatives[HeatIn] = _network.HeatFromOutside;
        derivatives[CylinderHeat] = _cylinder.HeatFromAmbient;
        derivatives[FreeVolume] = _freeVolumeFlow;
        derivatives[LiquidVolume] = LiquidFlow > 0 ? LiquidFlow / _vessel.LiquidDensity : 0;
        return true;
    }

    public override bool Events(double[] state, double[] values)
    {
        if (!TrySolve(state))
        {
            return false;
        }

        bool dry = !(_vessel.LiquidDensity > 0);
        values[HeelEvent] = dry ? _vessel.LiquidMargin : (LiquidMass - Heel) / state[Mass];
        values[CylinderFullEvent] = double.IsPositiveInfinity(CylinderLimit) ? 1 : CylinderLimit - state[CylinderMass];
        values[CutoutEvent] = double.IsPositiveInfinity(HighPressureCutout) ? 1 : HighPressureCutout - AppliancePressure;
        values[StallEvent] = dry ? 1 : (LiquidFlow * StallTime / state[Mass]) - 1;
        return true;
    }

    public override void OnStep(double time, double[] state)
    {
        if (!TrySolve(state))
        {
            return;
        }

        LargestDrive = Math.Max(LargestDrive, AppliancePressure - _cylinder.Pressure);
        DeepestFlashing = Math.Max(DeepestFlashing, 1 - (_cylinder.Pressure / _vessel.Pressure));
        _recorder.Add(new TrajectoryPoint
        {
            Seconds = time,
            AppliancePascals = AppliancePressure,
            SuctionPascals = _suction.SuctionPressure,
            DischargePascals = AppliancePressure,
            ApplianceKelvins = _vessel.Temperature,
            MetalKelvins = _network.MetalTemperature,
            CylinderKelvins = _cylinder.Temperature,
            ApplianceKilograms = state[Mass],
            LiquidKilograms = LiquidMass,
            CylinderKilograms = state[CylinderMass],
            KilogramsPerSecond = LiquidFlow - VaporFlow,
        });
    }

    /// <summary>A trial step may reach beyond the equation of state; that only means a shorter one.</summary>
    private bool TrySolve(double[] state)
    {
        try
        {
            return Solve(state);
        }
        catch (PropertyRangeException)
        {
            return false;
        }
        catch (ConvergenceException)
        {
            return false;
        }
    }

    private bool Solve(double[] state)
    {
        double mass = state[Mass];
        if (!(mass > 0)
            || !_vessel.Solve(mass / _volume, state[Energy] / mass)
            || !_cylinder.Solve(state[CylinderMass], state[CylinderEnergy], state[CylinderWall]))
        {
            return false;
        }

        _network.Solve(_vessel.Temperature, state[Metal], state[Water]);
        LiquidMass = mass * (1 - _vessel.VaporFraction);
        if (!(_vessel.LiquidDensity > 0))
        {
            // Past the last liquid: only the event location looks here.
            LiquidMass = 0;
            LiquidFlow = 0;
            VaporFlow = 0;
            AppliancePressure = _vessel.Pressure;
            return true;
        }

        double volumeFlow = Balance();
        double excess = _vessel.Pressure - AppliancePressure;
        if (excess > 0)
        {
            double drive = Math.Min(_vessel.Pressure - _cylinder.Pressure, FlashingShare * _vessel.Pressure);
            double selfDriven = LiquidLine.MassFlow(_liquidLine, drive, _vessel.LiquidDensity, _liquidViscosity) / _vessel.LiquidDensity;
            volumeFlow = Math.Max(volumeFlow, selfDriven);
            AppliancePressure = _vessel.Pressure;
            _suction.Solve(_cylinder.Pressure, _cylinder.VaporDensity, _exponent, _vaporViscosity, AppliancePressure);
        }

        LiquidFlow = volumeFlow * _vessel.LiquidDensity;
        VaporFlow = _suction.MassFlow;
        double suctionDensity = _cylinder.VaporDensity * _suction.SuctionPressure / _cylinder.Pressure;
        _machine.Solve(
            _suction.SuctionPressure, suctionDensity, _cylinder.VaporEnthalpy, VaporFlow, AppliancePressure, condensing: false);
        return true;
    }

    /// <summary>Volume flow at which hydraulics and machine agree: bracketed secant from the last one.</summary>
    private double Balance()
    {
        double low = 0;
        double high = double.PositiveInfinity;
        double q = _guess;
        double previous = 0;
        double previousValue = 0;
        for (int i = 0; i < MaximumIterations; i++)
        {
            double value = Surplus(q);
            if (value > 0)
            {
                low = q;
            }
            else
            {
                high = q;
            }

            double next = i == 0 ? q + (0.5 * value) : q - (value * (q - previous) / (value - previousValue));
            if (!(next > low && next < high))
            {
                next = double.IsPositiveInfinity(high) ? 2 * q : 0.5 * (low + high);
            }

            if (Math.Abs(next - q) <= Tolerance * q || high - low <= Tolerance * _freeVolumeFlow * 1e-3)
            {
                _guess = Math.Max(next, 1e-9 * _freeVolumeFlow);
                return next;
            }

            previous = q;
            previousValue = value;
            q = next;
        }

        throw new ConvergenceException("Push-pull flow not found.", MaximumIterations);
    }

    /// <summary>Vapor pushed over that displaces liquid, less the liquid flow that builds its pressure, m³/s.</summary>
    private double Surplus(double volumeFlow)
    {
        double drop = LiquidLine.Drop(_liquidLine, volumeFlow * _vessel.LiquidDensity, _vessel.LiquidDensity, _liquidViscosity);
        AppliancePressure = _cylinder.Pressure + Math.Max(0, drop);
        _suction.Solve(_cylinder.Pressure, _cylinder.VaporDensity, _exponent, _vaporViscosity, AppliancePressure);
        double density = _model.SaturationAtPressure(Math.Max(_lowestSaturation, Math.Min(AppliancePressure, _highestSaturation))).Dew.Density;
        return (DisplacementShare * _suction.MassFlow / density) - volumeFlow;
    }
}
