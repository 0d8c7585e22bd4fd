using System;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Flow;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Flow;

public class LineTests
{
    private const double PoundPerSquareInch = 6894.757;

    // Crane TP-410 (1965), example 4-22: air at 100 °F and 19.3 psi gauge (34.0 psia) from 10 ft of half-inch schedule 80 pipe to
    // the atmosphere. d² = 0.2981 in², K = 6.04 of the pipe + 1.0 exit, Y = 0.76; 62.7 scfm, a figure recalculated from
    // q'm = 678·Y·d²·√(Δp·p1/(K·T·Sg)). Standard air of TP-410: 14.7 psia, 60 °F.
    [Fact]
    public void Subsonic_air_as_in_Crane_example_4_22()
    {
        double flow = CraneFlow(pressurePsi: 34.0, rankine: 560, specificGravity: 1, d2: 0.2981, k: 7.04, outletPsi: 14.7, out bool choked);
        Assert.False(choked);
        double standardDensity = 14.7 * PoundPerSquareInch * 0.0289647 / (8.314462618 * 288.706);
        double scfm = flow / standardDensity / 0.3048 / 0.3048 / 0.3048 * 60;
        Assert.Equal(62.7, scfm, 0.01 * 62.7);
    }

    // Crane TP-410 (1965), example 4-21: coke-oven gas (Sg 0.42) at 140 °F and 125 psi gauge (139.7 psia) from 20 ft of 3-inch
    // schedule 40 pipe to the atmosphere, d² = 9.413 in², K = 2.87: sonic, printed answer 1 028 000 scfh. Isothermal choking
    // against Crane's adiabatic (k = 1.4) net expansion factor: 2 to 3 % lower, as theory has it.
    [Fact]
    public void Sonic_gas_as_in_Crane_example_4_21()
    {
        double flow = CraneFlow(pressurePsi: 139.7, rankine: 600, specificGravity: 0.42, d2: 9.413, k: 2.87, outletPsi: 14.7, out bool choked);
        Assert.True(choked);
        double standardDensity = 14.7 * PoundPerSquareInch * 0.42 * 0.0289647 / (8.314462618 * 288.706);
        double scfh = flow / standardDensity / 0.3048 / 0.3048 / 0.3048 * 3600;
        Assert.InRange(scfh / 1_028_000, 0.97, 1.0);
    }

    // The exit and entrance of the line (K = 1.5) belong to the total, so the fitting carries the rest; the hose itself is a millimeter.
    private static double CraneFlow(double pressurePsi, double rankine, double specificGravity, double d2, double k, double outletPsi, out bool choked)
    {
        double diameter = Math.Sqrt(d2) * 0.0254;
        var hose = new Hose
        {
            Length = Length.FromMillimeters(1),
            InnerDiameter = Length.FromMeters(diameter),
            Fittings = [Fitting.FromLossCoefficient("rest", k - 1.5, Length.FromMeters(diameter))],
        };
        double pressure = pressurePsi * PoundPerSquareInch;
        double density = pressure * specificGravity * 0.0289647 / (8.314462618 * rankine / 1.8);
        return new VaporLine(new Line([hose])).MassFlow(pressure, density, 1.4, 1e-12, outletPsi * PoundPerSquareInch, out choked);
    }

    [Fact]
    public void A_short_drop_is_the_incompressible_one()
    {
        Line line = new([Half(10)]);
        double flow = new VaporLine(line).MassFlow(1e6, 40, 1.15, 1.2e-5, 1e6 - 100, out bool choked);
        Assert.False(choked);
        Assert.Equal(100, LiquidLine.Drop(line, flow, 40, 1.2e-5), 0.02);
    }

    [Fact]
    public void Laminar_liquid_flow_follows_Hagen_and_Poiseuille()
    {
        var line = new Line([new Hose { Length = Length.FromMeters(1000), InnerDiameter = Length.FromMillimeters(5) }]);
        double viscosity = 0.5;
        double flow = LiquidLine.MassFlow(line, 1e6, 900, viscosity);
        double expected = 900 * Math.PI * Math.Pow(0.005, 4) * 1e6 / (128 * viscosity * 1000);
        Assert.Equal(expected, flow, 1e-4 * expected);
    }

    [Fact]
    public void Water_takes_the_drop_that_defines_the_flow_coefficient()
    {
        // Cv = 1 passes 1 US gal/min of water at 60 °F (999.0 kg/m³) with 1 psi.
        Fitting fitting = Fitting.FromFlowCoefficient("valve", 1);
        double mass = 999.0 * 3.785411784e-3 / 60;
        Assert.Equal(PoundPerSquareInch, fitting.Resistance * mass * mass / (2 * 999.0), 1e-3 * PoundPerSquareInch);
    }

    [Fact]
    public void Hoses_in_series_add_up()
    {
        Line one = new([Half(20)]);
        Line two = new([Half(10), Half(10)]);
        Assert.Equal(LiquidLine.Drop(one, 0.3, 1200, 2e-4), LiquidLine.Drop(two, 0.3, 1200, 2e-4), 1e-6);
    }

    [Fact]
    public void A_column_of_liquid_holds_back_what_its_weight_balances()
    {
        Line line = new([Half(10) with { Rise = Length.FromMeters(10) }]);
        Assert.Equal(0, LiquidLine.MassFlow(line, 1200 * 9.80665 * 10, 1200, 2e-4));
        Assert.True(LiquidLine.MassFlow(line, 1200 * 9.80665 * 10.1, 1200, 2e-4) > 0);
    }

    [Fact]
    public void Drop_and_flow_are_inverse()
    {
        Line line = new([Half(15) with { Rise = Length.FromMeters(-2) }]);
        double flow = LiquidLine.MassFlow(line, 5e4, 1200, 2e-4);
        Assert.Equal(5e4, LiquidLine.Drop(line, flow, 1200, 2e-4), 1e-5);
    }

    [Fact]
    public void A_choked_line_passes_no_more_when_the_outlet_pressure_falls()
    {
        Line line = new([Half(3)]);
        double deep = new VaporLine(line).MassFlow(5e5, 25, 1.15, 1.2e-5, 1e3, out bool choked);
        double deeper = new VaporLine(line).MassFlow(5e5, 25, 1.15, 1.2e-5, 0, out _);
        Assert.True(choked);
        Assert.Equal(deep, deeper, 1e-12);
    }

    [Property(MaxTest = 200)]
    public Property A_longer_or_thinner_hose_never_passes_more() => Prop.ForAll(
        Gen.Choose(1, 1000).Select(i => i / 1000.0).Three().ToArbitrary(),
        t =>
        {
            double length = 0.5 + (30 * t.Item1);
            double diameter = 3 + (20 * t.Item2);
            double outlet = 5e5 * t.Item3 * 0.999;
            double viscosity = 1.2e-5;
            double flow = new VaporLine(Of(length, diameter)).MassFlow(5e5, 25, 1.15, viscosity, outlet, out _);
            double longer = new VaporLine(Of(1.3 * length, diameter)).MassFlow(5e5, 25, 1.15, viscosity, outlet, out _);
            double thinner = new VaporLine(Of(length, 0.8 * diameter)).MassFlow(5e5, 25, 1.15, viscosity, outlet, out _);
            return longer <= flow && thinner <= flow && flow > 0;
        });

    [Property(MaxTest = 300)]
    public Property Line_and_machine_agree_at_the_solution() => Prop.ForAll(
        Gen.Choose(0, 1000).Select(i => i / 1000.0).Four().ToArbitrary(),
        t =>
        {
            double diameter = 3 + (15 * t.Item1);
            double pressure = 2e4 + (1e6 * t.Item2);
            double discharge = 1e4 + (1.5e6 * t.Item3);
            double displacement = 1e-4 * Math.Pow(100, t.Item4);
            RecoveryMachine machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromCubicMetersPerSecond(displacement));
            Line line = Of(6, diameter);
            double density = pressure * 4.2e-5;
            var suction = new SuctionLine(line, machine);
            suction.Solve(pressure, density, 1.15, 1.2e-5, discharge);
            if (suction.MassFlow == 0)
            {
                return machine.EfficiencyAt(discharge / pressure) == 0;
            }

            double drawn = displacement * machine.EfficiencyAt(discharge / suction.SuctionPressure) * density * suction.SuctionPressure / pressure;
            double passed = new VaporLine(line).MassFlow(pressure, density, 1.15, 1.2e-5, suction.SuctionPressure, out bool choked);
            bool bothAgree = suction.IsPassing
                ? drawn <= suction.MassFlow && Math.Abs((suction.SuctionPressure / discharge) - 1) < 1e-12
                : Math.Abs(drawn - suction.MassFlow) < 1e-8 * drawn && suction.SuctionPressure <= discharge * (1 + 1e-9);
            return bothAgree && Math.Abs(passed - suction.MassFlow) < 1e-6 * passed && choked == suction.IsChoked;
        });

    private static Hose Half(double meters) => new() { Length = Length.FromMeters(meters), InnerDiameter = Length.FromMillimeters(10) };

    private static Line Of(double meters, double millimeters) =>
        new([new Hose { Length = Length.FromMeters(meters), InnerDiameter = Length.FromMillimeters(millimeters) }]);

    /// <summary>Where laminar flow turns turbulent friction rises almost as the square of the flow and more on rough walls: the flow is found all the same.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1e-5)]
    [InlineData(1e-4)]
    [InlineData(5e-4)]
    public void Liquid_flow_is_found_through_the_transition(double roughness)
    {
        const double Density = 950;
        const double Viscosity = 0.01;
        Line line = new([Half(10) with { Roughness = Length.FromMeters(roughness) }]);
        for (double reynolds = 1000; reynolds < 6000; reynolds *= 1.02)
        {
            double flow = reynolds * Viscosity * Math.PI * Half(10).InnerDiameter.Meters / 4;
            double found = LiquidLine.MassFlow(line, LiquidLine.Drop(line, flow, Density, Viscosity), Density, Viscosity);
            Assert.Equal(flow, found, flow * 1e-9);
        }
    }
}
