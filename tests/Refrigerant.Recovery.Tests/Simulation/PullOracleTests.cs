using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>
/// A pull with everything on — wetted and dry metal, oil, warm suction gas, the machine's body, condenser, cylinder and its wall — against the same balances written out
/// again from docs/models.md with fixed steps, bisection for the suction pressure and the property model's own energy solve.
/// </summary>
public class PullOracleTests
{
    private const double Tolerance = 2e-6;
    private const double Air = 303.15;
    private const double Start = 297.15;
    private const double Displacement = 0.4e-3;
    private const double Bore = 0.007;
    private const double HoseLength = 4;
    private const double Metal = 20 * 480;
    private const double Outer = 60;
    private const double Inner = 400;
    private const double OilMass = 1.5;
    private const double OilMolarMass = 0.6;
    private const double Factor = 1.4;

    [Theory]
    [InlineData("R-134a", 4, 40, 400, 4000)]
    [InlineData("R-22", 5, 40, 400, 4000)]
    [InlineData("R-290", 2, 40, 300, 4000)]
    [InlineData("R-123", 12, 60, 900, 4000)]
    public void A_pull_with_everything_on(string fluid, double charge, double liters, double seconds, int steps)
    {
        Appliance appliance = new()
        {
            Fluid = Fluid.Get(fluid),
            Charge = Mass.FromKilograms(charge),
            InternalVolume = Volume.FromLiters(liters),
            Temperature = Temperature.FromKelvins(Start),
            Surroundings = Temperature.FromKelvins(Air),
            HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(1 / Outer),
            MetalMass = Mass.FromKilograms(20),
            MetalResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(1 / Inner),
            Oil = new ApplianceOil
            {
                Mass = Mass.FromKilograms(OilMass),
                Kind = OilKind.PolyolEster,
                MolarMass = MolarMass.FromKilogramsPerMole(OilMolarMass),
                SolubilityFactor = Factor,
                RefrigerantFraction = Ratio.FromDecimalFractions(0.15),
            },
        };
        RecoveryCylinder cylinder = new()
        {
            Label = "C",
            WaterCapacity = Mass.FromKilograms(30),
            TareWeight = Mass.FromKilograms(14),
            ServicePressure = Pressure.FromPoundsForcePerSquareInch(600),
            Content = Mass.FromKilograms(4),
        };
        RecoveryMachine machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromCubicMetersPerSecond(Displacement));
        Hose hose = new() { Length = Length.FromMeters(HoseLength), InnerDiameter = Length.FromMeters(Bore) };
        StageResult result = VaporRecovery.Simulate(
            appliance,
            machine,
            new HoseSet { VaporSide = [hose] },
            cylinder,
            new VaporRecoveryOptions { MaximumDuration = Duration.FromSeconds(seconds), RelativeTolerance = 1e-9, MaximumSteps = 100_000 });
        Assert.Equal(StageEnd.TimeLimit, result.End);

        var oracle = new Oracle(appliance.Fluid.Model, liters * 1e-3, cylinder.InternalVolume.CubicMeters);
        double[] y = oracle.Initial(charge, 4);
        FixedStep.Integrate(y, seconds, steps, oracle.Slope);

        Assert.Equal(y[0] + y[5], result.RemainingMass.Kilograms, Tolerance * charge);
        Assert.Equal(y[5], result.Appliance.DissolvedMass.Kilograms, Tolerance * charge);
        Assert.Equal(y[3] / (Metal * (1 - y[4])), result.Appliance.DryMetalTemperature.Kelvins, Tolerance * Start);
        Assert.Equal(oracle.OilTemperature(y), result.Appliance.OilTemperature.Kelvins, Tolerance * Start);
        Assert.Equal(y[7], result.After.MachineTemperature!.Value.Kelvins, Tolerance * Start);
        Assert.Equal(y[8], result.Cylinder!.Mass.Kilograms, Tolerance * charge);
        VesselPoint end = appliance.Fluid.Model.VesselAtEnergy(y[0] / (liters * 1e-3), y[1] / y[0]);
        Assert.Equal(end.Bulk.Temperature, result.Appliance.Temperature.Kelvins, 5 * Tolerance * Start);
        Assert.Equal(end.Bulk.Pressure, result.Appliance.Pressure.Pascals, 50 * Tolerance * end.Bulk.Pressure);
        VesselPoint received = appliance.Fluid.Model.VesselAtEnergy(y[8] / cylinder.InternalVolume.CubicMeters, y[9] / y[8]);
        Assert.Equal(received.Bulk.Temperature, result.Cylinder.Temperature.Kelvins, Tolerance * Start);
    }

    /// <summary>States: m, U, E_wet, E_dry, f, dissolved, E_oil, T_body, m_cylinder, U_cylinder, T_wall.</summary>
    private sealed class Oracle
    {
        // A machine of 0.4 L/s: 4 kJ/K, 6 W/K, 1 W/K, 100 W at 0.5 L/s in proportion; 3 kW at 15 K at 0.5 L/s.
        private const double Share = Displacement / 5e-4;
        private const double Body = 4000 * Share;
        private const double BodyAir = 6 * Share;
        private const double BodyGas = 1 * Share;
        private const double Friction = 100 * Share;
        private const double Condenser = 3000 * Share / 15;
        private const double HoseConductance = 8 * Math.PI * (Bore + 0.008) * HoseLength;

        private readonly PropertyModel _model;
        private readonly double _volume;
        private readonly double _cylinderVolume;
        private readonly double _viscosity;
        private readonly double _idealExponent;
        private readonly double _exponentSlope;
        private readonly double _idealHeat;
        private readonly double _heatSlope;
        private readonly double _oilReference;

        public Oracle(PropertyModel model, double volume, double cylinderVolume)
        {
            _model = model;
            _volume = volume;
            _cylinderVolume = cylinderVolume;
            _viscosity = model.ViscosityAtSaturation(Start).Vapor;
            _oilReference = model.SaturationAtTemperature(Start).Bubble.InternalEnergy;
            double thin = 1e-5 * model.CriticalDensity;
            StateDerivatives ideal = model.DerivativesAt(Start, thin);
            _idealExponent = thin * ideal.SpeedOfSound * ideal.SpeedOfSound / model.VesselAtTemperature(Start, thin).Bulk.Pressure;
            _idealHeat = ideal.IsobaricHeatCapacity;
            StatePoint dew = model.SaturationAtTemperature(Math.Min(Start, 0.95 * model.CriticalTemperature)).Dew;
            StateDerivatives real = model.DerivativesAt(dew.Temperature, dew.Density);
            _exponentSlope = ((dew.Density * real.SpeedOfSound * real.SpeedOfSound / dew.Pressure) - _idealExponent) / dew.Pressure;
            _heatSlope = (real.IsobaricHeatCapacity - _idealHeat) / dew.Pressure;
        }

        public double[] Initial(double charge, double content)
        {
            double dissolved = OilMass * 0.15 / 0.85;
            double mass = charge - dissolved;
            VesselPoint vessel = _model.VesselAtTemperature(Start, mass / _volume);
            double f = Within(vessel.LiquidVolumeFraction);
            VesselPoint cylinder = _model.VesselAtTemperature(Air, content / _cylinderVolume);
            return
            [
                mass, mass * vessel.Bulk.InternalEnergy, Metal * f * Start, Metal * (1 - f) * Start, f, dissolved,
                (OilMass * 2000 * Start) + (dissolved * _oilReference), Air, content, content * cylinder.Bulk.InternalEnergy, Air,
            ];
        }

        public double OilTemperature(double[] y) => (y[6] - (y[5] * _oilReference)) / (OilMass * 2000);

        public void Slope(double[] y, double[] d)
        {
            VesselPoint vessel = _model.VesselAtEnergy(y[0] / _volume, y[1] / y[0]);
            StatePoint vapor = vessel.Vapor;
            double t = vessel.Bulk.Temperature;
            VesselPoint cylinder = _model.VesselAtEnergy(y[8] / _cylinderVolume, y[9] / y[8]);
            double discharge = cylinder.Bulk.Pressure;
            double heat = _idealHeat + (_heatSlope * vapor.Pressure);
            double conductance = HoseConductance + BodyGas;
            double around = ((HoseConductance * Air) + (BodyGas * y[7])) / conductance;
            double flow = Flow(vapor.Pressure, vapor.Density, discharge, t, around, conductance, heat, out double suction);

            // Warming on the way, compression, the body's share of it, the condenser.
            double units = conductance / (flow * heat);
            double gain = 1 - Math.Exp(-units);
            double warm = t + ((around - t) * gain);
            double fromBody = BodyGas * (y[7] - t) * gain / units;
            double kappa = _idealExponent + (_exponentSlope * suction);
            double share = (kappa - 1) / kappa;
            double rise = (Math.Pow(discharge / suction, share) - 1) / 0.65;
            double density = vapor.Density * suction / vapor.Pressure * t / warm;
            double work = suction / density / share * rise;
            double capacity = flow * (_idealHeat + (_heatSlope * suction));
            double toBody = capacity * ((warm * (1 + rise)) - y[7]) * (1 - Math.Exp(-BodyGas / capacity));
            double hot = vapor.Enthalpy + (heat * (warm - t)) + work - (toBody / flow);
            StatePoint dew = _model.SaturationAtPressure(discharge).Dew;
            double outlet = hot;
            if (dew.Temperature > Air)
            {
                double needed = flow * (hot - _model.SaturationAtTemperature(Math.Max(dew.Temperature - 3, Air)).Bubble.Enthalpy);
                double possible = Condenser * (dew.Temperature - Air);
                outlet = hot - (Math.Pow(Math.Pow(needed, -4) + Math.Pow(possible, -4), -0.25) / flow);
            }

            // Metal.
            double f = y[4];
            double wet = y[2] / (Metal * f);
            double dry = y[3] / (Metal * (1 - f));
            double change = (Within(vessel.LiquidVolumeFraction) - f) / 10;
            double moved = Metal * change * (change < 0 ? wet : dry);
            double toLiquid = f * Inner * (wet - t);
            double toVapor = (1 - f) * Inner / 10 * (dry - t);

            // Oil.
            double oil = OilTemperature(y);
            SaturationPoint saturation = _model.SaturationAtTemperature(oil);
            double level = vapor.Pressure / saturation.Bubble.Pressure;
            double ratio = _model.MolarMass / OilMolarMass;
            double equilibrium = level < 1 ? OilMass * ratio * Factor * level / (1 - level) : double.PositiveInfinity;
            double own = y[5] / OilMass / ratio;
            double excess = own / (Factor + own) / level;
            double z = Math.Min(1, Math.Max(0, (excess - 1.5) / 0.5));
            double foam = (6 * Math.Pow(z, 5)) - (15 * Math.Pow(z, 4)) + (10 * Math.Pow(z, 3));
            double release = y[5] > equilibrium ? (y[5] - equilibrium) * (((1 - foam) / 3.2e5) + (foam / 90)) : 0;
            double oilHeat = 15 * Math.Pow(OilMass, 2.0 / 3) * (dry - oil);

            // Cylinder: 10 and 200 W/(m²·K) over 5.8·V^(2/3).
            double surface = 5.8 * Math.Pow(_cylinderVolume, 2.0 / 3);
            double fromWall = 200 * surface * (y[10] - cylinder.Bulk.Temperature);

            d[0] = release - flow;
            d[1] = (release * saturation.Dew.Enthalpy) - (flow * vapor.Enthalpy) + toLiquid + toVapor;
            d[2] = (f * Outer * (Air - wet)) - toLiquid + moved;
            d[3] = ((1 - f) * Outer * (Air - dry)) - toVapor - moved - oilHeat;
            d[4] = change;
            d[5] = -release;
            d[6] = oilHeat - (release * saturation.Dew.Enthalpy);
            d[7] = (toBody - fromBody + Friction - (BodyAir * (y[7] - Air))) / Body;
            d[8] = flow;
            d[9] = (flow * outlet) + fromWall;
            d[10] = ((10 * surface * (Air - y[10])) - fromWall) / (14 * 480);
        }

        private static double Within(double level) => Math.Min(0.999, Math.Max(0.001, level));

        /// <summary>What the hose passes to x·p and what the machine draws of gas that warms, by bisection in x; the flow inside by bisection too.</summary>
        private double Flow(double pressure, double density, double discharge, double t, double around, double conductance, double heat, out double suction)
        {
            double area = Math.PI / 4 * Bore * Bore;
            double Drawn(double x)
            {
                double cold = Displacement * Math.Max(0, 1 - (0.04 * (Math.Pow(Math.Max(1, discharge / (x * pressure)), 1 / 1.15) - 1))) * density * x;
                double Warm(double flow) => around + ((t - around) * Math.Exp(-conductance / (flow * heat)));
                return FixedStep.Bisect(1e-12, 2 * cold, flow => flow < cold * t / Warm(flow));
            }

            double Passed(double x, double flow)
            {
                double reynolds = flow * Bore / (area * _viscosity);
                double a = Math.Pow(2.457 * Math.Log(1 / (Math.Pow(7 / reynolds, 0.9) + (0.27 * 1e-5 / Bore))), 16);
                double b = Math.Pow(37530 / reynolds, 16);
                double friction = 8 * Math.Pow(Math.Pow(8 / reynolds, 12) + Math.Pow(a + b, -1.5), 1.0 / 12);
                double k = (friction * HoseLength / Bore) + 1.5;
                return area * Math.Sqrt(pressure * density * (1 - (x * x)) / (k - (2 * Math.Log(x))));
            }

            double x = FixedStep.Bisect(1e-6, 1, middle =>
            {
                double drawn = Drawn(middle);
                return Passed(middle, drawn) > drawn;
            });
            suction = x * pressure;
            return Drawn(x);
        }
    }
}
