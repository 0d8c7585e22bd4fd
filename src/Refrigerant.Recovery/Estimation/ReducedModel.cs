using System;

namespace Refrigerant.Recovery.Estimation;

/// <summary>
/// An appliance that is emptied, reduced to what an estimator can afford: one vessel, one lump of metal, oil, machine and hose in closed
/// form. Allocates nothing, keeps no state, never throws; thread-safe.
/// </summary>
/// <remarks>
/// Balances of mass and energy at a temperature T that liquid and vapor share, h step, linearly implicit in T and the metal's temperature T_w
/// (Hairer and Wanner, <i>Solving ODEs II</i>, IV.7):
/// (C/h + k)·dT − k·dT_w = k·(T_w − T) − (ṁ − r)·L; (C_w/h + K + k)·dT_w − k·dT = K·(T_air − T_w) − k·(T_w − T),
/// C and L from <see cref="SaturationTable"/>, k the conductance to the wetted share of the metal, K that from the air, r what leaves the oil.
/// Hose: 1 − y² = (ρ/p)·S²·η²·y²·(R + (1/y − y)/A²), y suction over appliance pressure; 1/y − y stands for −2·ln y. Machine: ṁ = S·η·ρ·y.
/// </remarks>
internal sealed class ReducedModel
{
    /// <summary>Where the loss of efficiency z passes this, η bends from 1 − z into an exponential: an estimator must never be certain of a stall.</summary>
    private const double Bend = 0.6;

    private const double AfterBend = 1 - Bend;
    private const int HoseIterations = 4;

    /// <summary>Share of the charge that the mass never falls below: where a filter's sample has delivered more than there was.</summary>
    private const double LeastMass = 1e-5;

    /// <summary>K that a step may change the temperature by.</summary>
    private const double LargestChange = 20;

    /// <summary>Pressure over saturation pressure up to which the oil's equilibrium is followed.</summary>
    private const double LargestRelativePressure = 0.9;

    /// <summary>How far the oil's temperature lies from the metal's towards the air's, 0 to 1: common practice, no source.</summary>
    private const double OilWarmth = 0.5;

    public ReducedModel(SaturationTable table) => Table = table;

    /// <summary>The fluid.</summary>
    public SaturationTable Table { get; }

    /// <summary>Pressures, flow and phases at an instant.</summary>
    public void Evaluate(in ReducedState state, in ReducedParameters parameters, in ReducedInputs inputs, out ReducedOutput output)
    {
        Table.At(state.Temperature, out SaturationValues at);
        Evaluate(in state, in parameters, in inputs, in at, out output);
    }

    /// <summary>Moves a state on.</summary>
    /// <param name="state">The state.</param>
    /// <param name="parameters">The parameters.</param>
    /// <param name="inputs">The inputs, constant meanwhile.</param>
    /// <param name="duration">s.</param>
    /// <param name="largestStep">s; the step is first-order.</param>
    public void Advance(ref ReducedState state, in ReducedParameters parameters, in ReducedInputs inputs, double duration, double largestStep)
    {
        int steps = Math.Max(1, (int)Math.Ceiling((duration / largestStep) - 1e-9));
        double h = duration / steps;
        for (int i = 0; i < steps; i++)
        {
            Step(ref state, in parameters, in inputs, h);
        }
    }

    /// <summary>Moves a state on by one step and two half ones, extrapolated to second order.</summary>
    /// <returns>Pressures, flow and phases before it.</returns>
    public void AdvanceSecondOrder(ref ReducedState state, in ReducedParameters parameters, in ReducedInputs inputs, double h)
    {
        ReducedState whole = state;
        Step(ref whole, in parameters, in inputs, h);
        Step(ref state, in parameters, in inputs, 0.5 * h);
        Step(ref state, in parameters, in inputs, 0.5 * h);
        state.Delivered = (2 * state.Delivered) - whole.Delivered;
        state.Temperature = Within((2 * state.Temperature) - whole.Temperature);
        state.MetalTemperature = Within((2 * state.MetalTemperature) - whole.MetalTemperature);
        double dissolved = (2 * state.Dissolved) - whole.Dissolved;
        state.Dissolved = dissolved > 0 ? dissolved : state.Dissolved;
    }

    /// <summary>Refrigerant in the appliance besides what oil holds, kg.</summary>
    private static double MassOf(in ReducedState state, in ReducedParameters parameters)
    {
        double mass = parameters.Charge - state.Delivered - state.Dissolved;
        double least = LeastMass * parameters.Charge;
        return mass > least ? mass : least;
    }

    /// <summary>Share of the metal that boiling liquid wets.</summary>
    private static double WettedShare(double liquid, in ReducedParameters parameters)
    {
        if (parameters.WetShare >= 1)
        {
            return 1;
        }

        double fill = Math.Max(1e-6, Math.Min(1, liquid / parameters.Charge));
        double power = parameters.WetExponent == 0.5 ? Math.Sqrt(fill) : Math.Pow(fill, parameters.WetExponent);
        return parameters.WetShare + ((1 - parameters.WetShare) * power);
    }

    private static double Efficiency(double ratio, double expansion, in ReducedParameters parameters)
    {
        if (ratio <= 1)
        {
            return 1;
        }

        double lost = (parameters.Clearance * (expansion - 1)) + (parameters.Leakage * (ratio - 1));
        return lost < Bend ? 1 - lost : AfterBend * Math.Exp(-(lost - Bend) / AfterBend);
    }

    private void Step(ref ReducedState state, in ReducedParameters parameters, in ReducedInputs inputs, double h)
    {
        Table.At(state.Temperature, out SaturationValues at);
        Evaluate(in state, in parameters, in inputs, in at, out ReducedOutput now);
        double capacity;
        double takes;
        double inner;
        if (now.IsDry)
        {
            capacity = now.Mass * at.GasHeatCapacity;
            takes = now.Pressure * parameters.Volume / now.Mass;
            inner = parameters.InnerConductance / parameters.DryFactor;
        }
        else
        {
            double space = parameters.Volume - (now.Mass * at.LiquidVolume);
            capacity = (now.Mass * at.LiquidHeatCapacity) + (space * at.VolumeHeatCapacity);
            takes = at.VaporTakes;
            inner = parameters.InnerConductance * WettedShare(now.LiquidMass, in parameters);
        }

        // What the oil gives off: towards x/(1 − x) times its capacity, x over the saturation pressure at the oil's own temperature.
        double oil = state.MetalTemperature + (OilWarmth * (inputs.AirTemperature - state.MetalTemperature));
        double saturation = at.DewPressure * Math.Exp(at.DewSlope * (oil - state.Temperature) * state.Temperature / oil);
        double relative = Math.Min(LargestRelativePressure, now.Pressure / saturation);
        double held = parameters.OilCapacity * relative / (1 - relative);
        double share = Math.Max(0, 1 - (held / Math.Max(state.Dissolved, 1e-12))) * h / (parameters.OilTime + h);
        double given = share * state.Dissolved;
        double flow = Math.Min(now.Flow, 0.5 * now.Mass / h);

        double heat = inner * (state.MetalTemperature - state.Temperature);
        double fromAir = parameters.OuterConductance * (inputs.AirTemperature - state.MetalTemperature);
        double r1 = heat - ((flow - (given / h)) * takes);
        double r2 = fromAir - heat;
        double a11 = (capacity / h) + inner;
        double a22 = (parameters.MetalCapacity / h) + parameters.OuterConductance + inner;
        double determinant = (a11 * a22) - (inner * inner);
        double change = ((r1 * a22) + (inner * r2)) / determinant;
        double metalChange = ((a11 * r2) + (inner * r1)) / determinant;
        state.Temperature = Within(state.Temperature + Math.Max(-LargestChange, Math.Min(LargestChange, change)));
        state.MetalTemperature = Within(state.MetalTemperature + metalChange);
        state.Delivered += flow * h;
        state.Dissolved -= given;
    }

    private void Evaluate(
        in ReducedState state, in ReducedParameters parameters, in ReducedInputs inputs, in SaturationValues at, out ReducedOutput output)
    {
        double mass = MassOf(in state, in parameters);
        double saturated = at.VaporDensity * parameters.Volume;
        if (inputs.Phase == AssumedPhase.LiquidPresent && mass < saturated)
        {
            mass = saturated;
        }

        output.Mass = mass;
        output.IsDry = inputs.Phase == AssumedPhase.VaporOnly || (inputs.Phase == AssumedPhase.FromDensity && mass <= saturated);
        double density;
        if (output.IsDry)
        {
            // Compressibility falls about linearly with density from one to that of saturated vapor.
            density = mass / parameters.Volume;
            double z = 1 + ((at.Compressibility - 1) * Math.Min(density / at.VaporDensity, 1.2));
            output.Pressure = density * Table.GasConstant * state.Temperature * z;
            output.LiquidMass = 0;
        }
        else
        {
            double vaporVolume = 1 / at.VaporDensity;
            double vapor = Math.Max(0, ((parameters.Volume / mass) - at.LiquidVolume) / (vaporVolume - at.LiquidVolume));
            density = at.VaporDensity;
            output.Pressure = at.BubblePressure + (Math.Min(1, vapor) * (at.DewPressure - at.BubblePressure));
            output.LiquidMass = mass * Math.Max(0, 1 - vapor);
        }

        output.SuctionPressure = output.Pressure;
        output.Flow = 0;
        if (inputs.IsDrawing)
        {
            double air = inputs.AirTemperature - state.Temperature;
            double thinner = air > 0 ? state.Temperature / (state.Temperature + (parameters.Warming * air)) : 1;
            Draw(density, thinner * parameters.Displacement, in parameters, ref output);
        }
    }

    private void Draw(double density, double displacement, in ReducedParameters parameters, ref ReducedOutput output)
    {
        double ratio = parameters.DischargePressure / output.Pressure;
        double expansion = ratio > 1 ? Math.Pow(ratio, parameters.InverseExponent) : 1;
        double rest = 1 - parameters.InverseExponent;
        double efficiency = Efficiency(ratio, expansion, in parameters);
        double velocity = displacement * displacement * density / output.Pressure;
        double perFlow = parameters.HoseFlow / (displacement * density);
        double y = 1;
        for (int i = 0; i < HoseIterations; i++)
        {
            double slower = Math.Max(1e-3, Math.Min(1e3, perFlow / (efficiency * y)));
            double friction = parameters.FixedLoss + ((1 - parameters.FixedLoss) * Math.Sqrt(Math.Sqrt(slower)));
            double loss = (parameters.HoseResistance * friction) + (((1 / y) - y) * parameters.InverseArea);
            y = 1 / Math.Sqrt(1 + (velocity * efficiency * efficiency * loss));
            double log = rest * Math.Log(y);
            double raised = expansion / y * (1 + (log * (1 + (log * (0.5 + (log / 6))))));
            efficiency = Efficiency(ratio / y, raised, in parameters);
        }

        output.Flow = displacement * efficiency * density * y;
        output.SuctionPressure = y * output.Pressure;
    }

    private double Within(double temperature) => Math.Max(Table.Lowest, Math.Min(Table.Highest, temperature));
}
