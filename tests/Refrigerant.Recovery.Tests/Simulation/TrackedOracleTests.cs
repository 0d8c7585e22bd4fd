using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Tests.Processes;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>
/// A blend whose composition is followed: a pull, then a hold with heaters and a cylinder in a bath. dm_i/dt = −ṁ·y_i of the vapor in equilibrium, oil that gives off the blend as
/// charged, a balance a component in the cylinder too. Fixed steps on the property engine's flash.
/// </summary>
public class TrackedOracleTests
{
    private const double Start = 295.15;
    private const double Air = 300.15;
    private const double Volume0 = 0.03;
    private const double OilMass = 1.2;

    [Theory]
    [InlineData("R-407C", 6)]
    [InlineData("R-410A", 6)]
    [InlineData("R-407C", 1.6)] // vapor only, so that oil is what is left
    public void A_pull_and_a_hold(string fluid, double charge)
    {
        const double PullSeconds = 240, HoldSeconds = 600;
        Appliance appliance = Setups.Appliance(fluid, charge, 1e3 * Volume0, Start - 273.15, 60) with
        {
            Surroundings = Temperature.FromKelvins(Air),
            MetalMass = Mass.FromKilograms(20),
            MetalResistance = Setups.Conductance(300),
            Oil = new ApplianceOil
            {
                Mass = Mass.FromKilograms(OilMass),
                Kind = OilKind.PolyolEster,
                MolarMass = MolarMass.FromKilogramsPerMole(0.6),
                SolubilityFactor = 1.3,
                RefrigerantFraction = Ratio.FromDecimalFractions(0.2),
            },
        };
        RecoveryCylinder cylinder = Setups.Cylinder(30, 4) with { ServicePressure = Pressure.FromMegapascals(6) };
        StageResult pull = VaporRecovery.Simulate(
            appliance,
            Setups.Machine(0.4),
            Setups.Hoses(3, 8),
            cylinder,
            new VaporRecoveryOptions { Composition = CompositionMode.Tracked, MaximumDuration = Duration.FromSeconds(PullSeconds), RelativeTolerance = 1e-9, MaximumSteps = 100_000 });
        Assert.Equal(StageEnd.TimeLimit, pull.End);
        StageResult hold = Hold.Simulate(appliance, new HoldOptions
        {
            Start = pull.After,
            Duration = Duration.FromSeconds(HoldSeconds),
            Inputs = new SimulationInputs { HeaterPower = 150, CrankcaseHeaterPower = 60, CylinderSurroundings = 280, CylinderFactor = 20 },
            RelativeTolerance = 1e-9,
            MaximumSteps = 100_000,
        });

        var model = (MixtureModel)appliance.Fluid.Model;
        int n = model.Composition.Count;
        double[] z = [.. model.Composition.Select(component => component.MassFraction)];
        double cylinderVolume = cylinder.InternalVolume.CubicMeters;
        double dissolved = OilMass * 0.2 / 0.8;
        double mass = charge - dissolved;
        VesselPoint before = model.VesselAtTemperature(Start, mass / Volume0);
        var near = new Flash(model, Volume0);
        var received = new Flash(model, cylinderVolume);
        var metal = new OracleMetal(20 * 480, 60, 300);
        var oil = new OracleOil(model, OilMass, 0.6, 1.3, Start);
        var machine = new OracleMachine(model, new OracleGas(model, Start), new OracleLine([], (3, 0.008)), 0.4e-3);
        double surface = 5.8 * Math.Pow(cylinderVolume, 2.0 / 3);
        double inCylinder = 4 * model.VesselAtTemperature(Air, 4 / cylinderVolume).Bulk.InternalEnergy;

        // Masses, U, E_wet, E_dry, f, dissolved, E_oil, body; from c on masses, U and wall of the cylinder.
        int c = n + 7;
        double[] y =
        [
            .. z.Select(w => w * mass), mass * before.Bulk.InternalEnergy, .. metal.Initial(before.LiquidVolumeFraction, Start), .. oil.Initial(dissolved), Air,
            .. z.Select(w => 4 * w), inCylinder, Air,
        ];
        void Slope(double[] s, double[] d, bool pulls)
        {
            near.Solve(s, 0, s[n]);
            received.Solve(s, c, s[c + n]);
            metal.Slope(s, d, n + 1, near.Temperature, near.Temperature, near.Level, Air, pulls ? 0 : 150);
            oil.Slope(s, d, n + 4, near.Pressure, metal.Dry(s, n + 1), pulls ? 0 : 60);
            d[n + 2] -= oil.Heat;
            d[n] = metal.ToLiquid + metal.ToVapor + (oil.Release * oil.Enthalpy);
            double flow = 0;
            d[n + 6] = 0;
            if (pulls)
            {
                machine.Solve(near.Vapor, near.Pressure, received.Pressure, s[n + 6], Air);
                flow = machine.Flow;
                d[n] -= flow * near.Vapor.Enthalpy;
                d[n + 6] = machine.BodySlope;
            }

            for (int i = 0; i < n; i++)
            {
                d[i] = (oil.Release * z[i]) - (flow * near.Fractions[i]);
                d[c + i] = flow * near.Fractions[i];
            }

            double outside = OracleCylinder.Outside(cylinderVolume, Air) * surface;
            double wall = 200 * surface * (s[c + n + 1] - received.Temperature);
            d[c + n] = (flow * machine.Outlet) + wall;
            d[c + n + 1] = ((pulls ? outside * (Air - s[c + n + 1]) : 20 * outside * (280 - s[c + n + 1])) - wall) / (18 * 480);
        }

        FixedStep.Integrate(y, PullSeconds, 480, (s, d) => Slope(s, d, true));
        Compare(pull);
        FixedStep.Integrate(y, HoldSeconds, 600, (s, d) => Slope(s, d, false));
        Compare(hold);

        void Compare(StageResult result)
        {
            near.Solve(y, 0, y[n]);
            received.Solve(y, c, y[c + n]);
            double left = y.Take(n).Sum();
            Assert.Equal(left + y[n + 4], result.RemainingMass.Kilograms, 2e-6 * charge);
            Assert.Equal(y[n + 4], result.Appliance.DissolvedMass.Kilograms, 2e-6 * charge);
            Assert.Equal(near.Temperature, result.Appliance.Temperature.Kelvins, 1e-5 * Start);
            Assert.Equal(near.Pressure, result.Appliance.Pressure.Pascals, 2e-5 * near.Pressure);
            Assert.Equal(oil.Temperature(y, n + 4), result.Appliance.OilTemperature.Kelvins, 2e-6 * Start);
            Assert.Equal(metal.Dry(y, n + 1), result.Appliance.DryMetalTemperature.Kelvins, 2e-6 * Start);
            Assert.Equal(received.Pressure, result.Cylinder!.Pressure.Pascals, 1e-5 * received.Pressure);
            for (int i = 0; i < n; i++)
            {
                Assert.Equal(y[i] / left, result.Appliance.Composition[i].MassFraction, 5e-6);
            }
        }
    }

    /// <summary>The property engine's flash of amounts in a volume.</summary>
    private sealed class Flash(MixtureModel model, double volume)
    {
        private readonly TrackedVessel _vessel = new(model);
        private readonly double[] _amounts = new double[model.Composition.Count];

        public double Temperature => _vessel.Temperature;

        public double Pressure => _vessel.Pressure;

        public double Level => _vessel.Liquid.Amount > 0 ? _vessel.Liquid.Volume / volume : 0;

        /// <summary>Mass fractions of the vapor.</summary>
        public double[] Fractions { get; } = new double[model.Composition.Count];

        public StatePoint Vapor => new(
            Phase.Vapor, Temperature, Pressure, _vessel.Vapor.Density, _vessel.Vapor.Enthalpy, _vessel.Vapor.Entropy, 1);

        public void Solve(double[] state, int first, double energy)
        {
            for (int i = 0; i < _amounts.Length; i++)
            {
                _amounts[i] = state[first + i] / _vessel.MolarMass(i);
            }

            _vessel.SolveAtEnergy(_amounts, volume, energy);
            double sum = 0;
            for (int i = 0; i < _amounts.Length; i++)
            {
                Fractions[i] = _vessel.VaporFractions[i] * _vessel.MolarMass(i);
                sum += Fractions[i];
            }

            for (int i = 0; i < _amounts.Length; i++)
            {
                Fractions[i] /= sum;
            }
        }
    }
}
