using System;
using Refrigerant.Recovery.Fluids.Mixtures;

namespace Refrigerant.Recovery.Estimation;

/// <summary>
/// An appliance that is emptied, reduced to what an estimator can afford: one vessel, metal in a wetted and a dry part, oil, machine and hose in
/// closed form. Allocates nothing, keeps no state, never throws; thread-safe.
/// </summary>
/// <remarks>
/// Balances of mass and energy at a temperature T that liquid and vapor share. Wetted share f of the metal of temperature T_w, dry rest of T_d, mean
/// T_m = f·T_w + (1 − f)·T_d; drying metal takes its energy along, so that neither balance needs df/dt:
/// C_m·dT_w/dt = K·(T_air − T_w) − k·(T_w − T) + C_m·μ·(T_m − T_w), C_m·dT_m/dt = K·(T_air − T_m) − Q, C·dT/dt = Q − (ṁ − r)·L,
/// Q = f·k·(T_w − T) + (1 − f)·(k/D)·(T_d − T). C and L from <see cref="SaturationTable"/>, K from the air, k to liquid with all metal wetted, k/D to
/// vapor, μ how fast metal conducts differences away, r what leaves the oil. Steps h are linearly implicit in the three temperatures (Hairer and
/// Wanner, <i>Solving ODEs II</i>, IV.7).
/// Hose: 1 − y² = (ρ/p)·S²·η²·y²·(R + (1/y − y)/A²), y suction over appliance pressure; 1/y − y stands for −2·ln y. Machine: ṁ = S·η·ρ·y.
/// </remarks>
internal sealed class ReducedModel
{
    /// <summary>Where the loss of efficiency z passes this, η bends from 1 − z into an exponential: an estimator must never be certain of a stall.</summary>
    private const double Bend = 0.6;

    private const double AfterBend = 1 - Bend;
    private const int HoseIterations = 4;

    /// <summary>The same from the suction that was last found.</summary>
    private const int HeldHoseIterations = 2;

    private const int GlideIterations = 3;

    /// <summary>Share of the charge that the mass never falls below: where a filter's sample has delivered more than there was.</summary>
    private const double LeastMass = 1e-5;

    /// <summary>kg/m³: a density to compare with.</summary>
    private const double Thin = 1;

    /// <summary>K that a step may change the temperature by.</summary>
    private const double LargestChange = 20;

    /// <summary>Pressure over saturation pressure up to which the oil's equilibrium is followed.</summary>
    private const double LargestRelativePressure = 0.9;

    /// <summary>How far the oil's temperature lies from the metal's towards the air's, 0 to 1: common practice, no source.</summary>
    private const double OilWarmth = 0.5;

    /// <summary>Time in which a film of liquid drains off a wall, s, by which the wetted share lags behind the level: common practice, no source.</summary>
    private const double DrainTime = 10;

    public ReducedModel(SaturationTable table) => Table = table;

    /// <summary>The fluid.</summary>
    public SaturationTable Table { get; }

    /// <summary>Pressures, flow and phases at an instant.</summary>
    public void Evaluate(in ReducedState state, in ReducedParameters parameters, in ReducedInputs inputs, out ReducedOutput output)
    {
        ReducedState found = state;
        Evaluate(ref found, in parameters, in inputs, out _, out output);
    }

    /// <summary>Finds what the neighbours of a state share with it well enough, and keeps it in the state: they then need little iteration of their own.</summary>
    public void Find(ref ReducedState state, in ReducedParameters parameters, in ReducedInputs inputs) =>
        Evaluate(ref state, in parameters, in inputs, out _, out _);

    /// <summary>Vapor in an appliance whose last liquid has just gone, kg.</summary>
    /// <param name="temperature">K.</param>
    /// <param name="volume">m³.</param>
    /// <param name="charge">What there was at the start, what liquid was taken left out, kg.</param>
    public double LastVapor(double temperature, double volume, double charge)
    {
        if (Table.Glide is null)
        {
            Table.At(temperature, out SaturationValues at);
            return at.VaporDensity * volume;
        }

        var parameters = new ReducedParameters { Volume = volume, FirstTemperature = temperature, Drift = 1 };
        double place = 0;
        Table.At(temperature, GlideRoot(ref place, GlideIterations, temperature, LeastMass * charge, charge, isDry: true, in parameters), out SaturationValues gliding);
        return gliding.VaporDensity * volume;
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
            Evaluate(ref state, in parameters, in inputs, out SaturationValues at, out ReducedOutput now);
            Step(ref state, in parameters, in inputs, h, in at, in now);
        }
    }

    /// <summary>Moves a state on by one step and two half ones, extrapolated to second order.</summary>
    public void AdvanceSecondOrder(ref ReducedState state, in ReducedParameters parameters, in ReducedInputs inputs, double h)
    {
        Evaluate(ref state, in parameters, in inputs, out SaturationValues at, out ReducedOutput now);
        ReducedState whole = state;
        Step(ref whole, in parameters, in inputs, h, in at, in now);
        Step(ref state, in parameters, in inputs, 0.5 * h, in at, in now);
        Evaluate(ref state, in parameters, in inputs, out at, out now);
        Step(ref state, in parameters, in inputs, 0.5 * h, in at, in now);
        state.Delivered = (2 * state.Delivered) - whole.Delivered;
        state.Temperature = Within((2 * state.Temperature) - whole.Temperature);
        state.MetalTemperature = Within((2 * state.MetalTemperature) - whole.MetalTemperature);
        state.WetTemperature = Within((2 * state.WetTemperature) - whole.WetTemperature);
        double dissolved = (2 * state.Dissolved) - whole.Dissolved;
        state.Dissolved = dissolved > 0 ? dissolved : state.Dissolved;
    }

    /// <summary>What the machine draws at another pressure at its inlet, as a share of the flow at an instant.</summary>
    public static double Drawn(double suction, in ReducedParameters parameters, in ReducedOutput at)
    {
        double now = at.SuctionPressure * Efficiency(at.SuctionPressure, in parameters);
        return now > 0 ? suction * Efficiency(suction, in parameters) / now : 0;
    }

    /// <summary>Efficiency of the machine at a pressure at its inlet, over that at pressure ratio one.</summary>
    public static double Efficiency(double suction, in ReducedParameters parameters)
    {
        double ratio = parameters.DischargePressure / Math.Max(1, suction);
        return Efficiency(ratio, ratio > 1 ? Math.Pow(ratio, parameters.InverseExponent) : 1, in parameters);
    }

    /// <summary>Refrigerant in the appliance besides what oil holds, kg.</summary>
    private static double MassOf(in ReducedState state, in ReducedParameters parameters)
    {
        double mass = parameters.Charge - state.Delivered - state.Dissolved;
        double least = LeastMass * parameters.Charge;
        return mass > least ? mass : least;
    }

    /// <summary>Share of the metal that boiling liquid wets, at the share of the volume that it fills.</summary>
    private static double WettedShare(double level, in ReducedParameters parameters)
    {
        double fill = Math.Max(1e-6, Math.Min(1, level));
        double power = parameters.WetExponent == 1 ? fill : parameters.WetExponent == 0.5 ? Math.Sqrt(fill) : Math.Pow(fill, parameters.WetExponent);
        return Math.Min(1, parameters.WetShare + ((1 - parameters.WetShare) * power));
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

    private void Step(
        ref ReducedState state, in ReducedParameters parameters, in ReducedInputs inputs, double h, in SaturationValues at, in ReducedOutput now)
    {
        double capacity;
        double takes;
        double wetted = 0;
        if (now.IsDry)
        {
            capacity = now.Mass * at.GasHeatCapacity;
            takes = now.Pressure * parameters.Volume / now.Mass;
        }
        else
        {
            capacity = (now.LiquidMass * at.LiquidHeatCapacity) + ((now.Mass - now.LiquidMass) * at.VaporHeatCapacity);
            takes = at.VaporTakes;
            wetted = WettedShare((now.LiquidMass + (DrainTime * now.Flow)) * at.LiquidVolume / (parameters.Volume * parameters.FullLevel), in parameters);
        }

        // What the oil gives off: towards what it holds at the pressure over the saturation pressure at its own temperature.
        double oil = state.MetalTemperature + (OilWarmth * (inputs.AirTemperature - state.MetalTemperature));
        double saturation = at.Pressure * Math.Exp(at.PressureSlope * (oil - state.Temperature) * state.Temperature / oil);
        double relative = Math.Min(LargestRelativePressure, now.Pressure / saturation);
        double held = parameters.OilCapacity * (1 + (parameters.OilBend * (relative - 0.5))) * relative / (1 - relative);
        double share = Math.Max(0, 1 - (held / Math.Max(state.Dissolved, 1e-12))) * h / (parameters.OilTime + h);
        double given = share * state.Dissolved;
        double flow = Math.Min(now.Flow + inputs.Passing, 0.5 * now.Mass / h);

        double inner = parameters.InnerConductance;
        double dry = inner / parameters.DryFactor;
        double outer = parameters.OuterConductance;
        double inertia = parameters.MetalCapacity / h;
        double mixing = parameters.MetalCapacity * parameters.Mixing;
        double byWet = wetted * (inner - dry);
        double byOwn = (wetted * inner) + ((1 - wetted) * dry);
        double heat = (byWet * state.WetTemperature) + (dry * state.MetalTemperature) - (byOwn * state.Temperature);

        // Three linear equations for the changes of T, T_w and T_m; that of T_w first, then that of T_m, are put into the rest.
        double r1 = heat - ((flow - (given / h)) * takes);
        double r2 = (outer * (inputs.AirTemperature - state.WetTemperature)) - (inner * (state.WetTemperature - state.Temperature))
            + (mixing * (state.MetalTemperature - state.WetTemperature));
        double r3 = (outer * (inputs.AirTemperature - state.MetalTemperature)) - heat;
        double perWet = 1 / (inertia + outer + inner + mixing);
        double w0 = r2 * perWet;
        double w1 = inner * perWet;
        double w3 = mixing * perWet;
        double a11 = (capacity / h) + byOwn - (byWet * w1);
        double a13 = dry + (byWet * w3);
        double a31 = byOwn - (byWet * w1);
        double a33 = inertia + outer + dry + (byWet * w3);
        double b1 = r1 + (byWet * w0);
        double b3 = r3 - (byWet * w0);
        double determinant = (a11 * a33) - (a13 * a31);
        double change = ((b1 * a33) + (a13 * b3)) / determinant;
        double metalChange = ((a11 * b3) + (a31 * b1)) / determinant;
        state.Temperature = Within(state.Temperature + Math.Max(-LargestChange, Math.Min(LargestChange, change)));
        state.MetalTemperature = Within(state.MetalTemperature + metalChange);
        state.WetTemperature = Within(state.WetTemperature + w0 + (w1 * change) + (w3 * metalChange));
        state.Delivered += flow * h;
        state.Dissolved -= given;
    }

    private void Evaluate(
        ref ReducedState state, in ReducedParameters parameters, in ReducedInputs inputs, out SaturationValues at, out ReducedOutput output)
    {
        output.Mass = MassOf(in state, in parameters);
        double saturated;
        if (Table.Glide is null)
        {
            Table.At(state.Temperature, out at);
            saturated = at.VaporDensity * parameters.Volume;
            output.LiquidMass = (output.Mass - saturated) / (1 - (at.VaporDensity * at.LiquidVolume));
        }
        else
        {
            double first = parameters.Charge - parameters.LiquidTaken - state.Dissolved;
            int iterations = inputs.IsNeighbour ? 0 : state.Glide > 0 ? 1 : GlideIterations;
            double root = GlideRoot(ref state.Glide, iterations, state.Temperature, output.Mass, first, inputs.Phase == AssumedPhase.VaporOnly, in parameters);
            Table.At(state.Temperature, root, out at);
            saturated = at.VaporDensity * parameters.Volume;
            output.LiquidMass = (output.Mass - saturated) / (1 - (at.VaporDensity * at.LiquidVolume));
        }

        if (inputs.Phase == AssumedPhase.LiquidPresent && output.Mass < saturated)
        {
            output.Mass = saturated;
        }

        output.IsDry = inputs.Phase == AssumedPhase.VaporOnly || (inputs.Phase == AssumedPhase.FromDensity && output.Mass <= saturated);
        double density;
        if (output.IsDry)
        {
            // Compressibility falls about linearly with density from that of thin vapor to that of saturated vapor.
            density = output.Mass / parameters.Volume;
            double z = at.ThinCompressibility + ((at.Compressibility - at.ThinCompressibility) * Math.Min(density / at.VaporDensity, 1.2));
            output.Pressure = density * Table.GasConstant * state.Temperature * z;
            output.LiquidMass = 0;
        }
        else
        {
            density = at.VaporDensity;
            output.Pressure = at.Pressure;
            output.LiquidMass = Math.Max(0, Math.Min(output.Mass, output.LiquidMass));
        }

        output.SuctionPressure = output.Pressure;
        output.Flow = 0;
        double suction = state.Suction;
        state.Suction = 0;
        if (inputs.IsDrawing)
        {
            Draw(density, Warmed(in state, in parameters, in inputs, density) * parameters.Displacement, suction, in parameters, ref output);
            state.Suction = output.SuctionPressure / output.Pressure;
        }
    }

    /// <summary>By how much suction gas is thinner at the machine than in the appliance: it warms towards the air, the more the less of it flows.</summary>
    /// <remarks>T_s = T + (T_air − T)·w, w = 1 − e^(−N) of an exchanger whose other side is at one temperature, with N/(1 + N) in its place; N falls as the flow of all that the machine sweeps.</remarks>
    private static double Warmed(in ReducedState state, in ReducedParameters parameters, in ReducedInputs inputs, double density)
    {
        double air = inputs.AirTemperature - state.Temperature;
        if (!(air > 0))
        {
            return 1;
        }

        double conductance = parameters.Warming * parameters.WarmingFlow;
        double warming = conductance / (conductance + ((1 - parameters.Warming) * parameters.Displacement * density) + 1e-12);
        return state.Temperature / (state.Temperature + (warming * air));
    }

    private static void Draw(double density, double displacement, double suction, in ReducedParameters parameters, ref ReducedOutput output)
    {
        double ratio = parameters.DischargePressure / output.Pressure;
        double expansion = ratio > 1 ? Math.Pow(ratio, parameters.InverseExponent) : 1;
        double rest = 1 - parameters.InverseExponent;
        double velocity = displacement * displacement * density / output.Pressure;
        double perFlow = parameters.HoseFlow / (displacement * density);
        double y = suction > 0 ? suction : 1;
        double efficiency = Efficiency(ratio / y, Expanded(expansion, y, rest), in parameters);
        int iterations = suction > 0 ? HeldHoseIterations : HoseIterations;
        for (int i = 0; i < iterations; i++)
        {
            double slower = Math.Max(1e-3, Math.Min(1e3, perFlow / (efficiency * y)));
            double friction = parameters.FixedLoss + ((1 - parameters.FixedLoss) * Math.Sqrt(Math.Sqrt(slower)));
            double loss = (parameters.HoseResistance * friction) + (((1 / y) - y) * parameters.InverseArea);
            y = 1 / Math.Sqrt(1 + (velocity * efficiency * efficiency * loss));
            efficiency = Efficiency(ratio / y, Expanded(expansion, y, rest), in parameters);
        }

        output.Flow = displacement * efficiency * density * y;
        output.SuctionPressure = y * output.Pressure;
    }

    /// <summary>(r/y)^(1/n) from r^(1/n), with 1 − 1/n for the rest.</summary>
    private static double Expanded(double expansion, double y, double rest)
    {
        double log = rest * Math.Log(y);
        return expansion / y * (1 + (log * (1 + (log * (0.5 + (log / 6))))));
    }

    /// <summary>How far the liquid of a blend has become another one, √q of <see cref="GlideTable"/>: by what is left of the charge, and of vapor over it.</summary>
    /// <remarks>
    /// (L + κ·G)·dl = −dL with G about constant, which counts where L is small, and closed at the start: e^(−l) = (L + κ·G)/(m1 + κ·G), m1 what there was at first.
    /// ds = v(T)·dl with the pace v; a pool that cools in proportion to what it has lost has s = v·l + (v1 − v)·(1 − e^(−l)), v1 at the start.
    /// G follows from the vapor's density, which follows from q = e^(−s).
    /// </remarks>
    /// <param name="place">√q over the root of the share that is left; of vapor only, over that of the share that fills the volume at <see cref="Thin"/>. Zero where it is not known yet.</param>
    /// <param name="iterations">How often it is to be found anew from there.</param>
    /// <param name="temperature">K.</param>
    /// <param name="mass">What is left, kg.</param>
    /// <param name="first">What there was, kg.</param>
    /// <param name="isDry">Whether only vapor is left.</param>
    /// <param name="parameters">The parameters.</param>
    private double GlideRoot(ref double place, int iterations, double temperature, double mass, double first, bool isDry, in ReducedParameters parameters)
    {
        GlideTable glide = Table.Glide!;
        double start = Math.Max(first, mass);

        // Vapor only stays where the last liquid was, which goes with the volume, whatever is left of it.
        double guess = Math.Sqrt((isDry ? parameters.Volume * Thin : mass) / start);
        double root = place > 0 ? place * guess : Math.Sqrt(mass / start);
        if (iterations == 0)
        {
            return root;
        }

        double drift = glide.IsFollowed ? parameters.Drift : 0;
        double pace = glide.Pace(temperature);
        double firstPace = glide.Pace(parameters.FirstTemperature);
        for (int i = 0; i < iterations; i++)
        {
            glide.Densities(temperature, root, out double density, out double volume, out double follows);
            double liquid = isDry ? 0 : Math.Max(0, (mass - (density * parameters.Volume)) / (1 - (density * volume)));
            double vapor = density * (parameters.Volume - (liquid * volume));
            double q = (liquid + (follows * vapor)) / (start + (follows * vapor));
            double way = (pace * Math.Log(q)) + ((pace - firstPace) * (1 - (q * q * Math.Sqrt(q))) / 2.5);
            root = Math.Exp(0.5 * ((drift * way) - ((1 - drift) * vapor / (liquid + vapor))));
        }

        place = root / guess;
        return root;
    }

    private double Within(double temperature) => Math.Max(Table.Lowest, Math.Min(Table.Highest, temperature));
}
