using System;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Rules;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Rules;

public sealed class OilPushTests
{
    private const double Gravity = 9.80665;
    private const double PascalsPerPsi = 6894.757293168361;

    /// <summary>Hagen–Poiseuille: Δp = 128·μ·L·ṁ/(π·ρ·D⁴); with a sharp entrance and the exit, K = 1.5: + 1.5·ṁ²/(2·ρ·A²).</summary>
    [Theory]
    [InlineData(0.3, 8, 2, 30)]
    [InlineData(0.05, 6, 1.5, 30)]
    [InlineData(5, 12, 10, 300)]
    public void Laminar_flow_is_that_of_the_closed_form(double viscosity, double millimeters, double meters, double kilopascals)
    {
        const double Density = 950;
        double diameter = millimeters / 1000;
        double area = Math.PI * diameter * diameter / 4;
        double linear = 128 * viscosity * meters / (Math.PI * Density * Math.Pow(diameter, 4));
        double square = 1.5 / (2 * Density * area * area);
        double drop = kilopascals * 1000;
        double flow = 2 * drop / (linear + Math.Sqrt((linear * linear) + (4 * square * drop)));

        OilPush push = OilPush.At(Oil(viscosity, millimeters, meters), Pressure.FromKilopascals(kilopascals));

        Assert.Equal(flow, push.InitialFlow.KilogramsPerSecond, flow * 1e-9);
        Assert.Equal(4 / flow, push.Duration!.Value.Seconds, 4 / flow * 1e-9);
        Assert.Equal(4 * flow / (Math.PI * diameter * viscosity), push.ReynoldsNumber, push.ReynoldsNumber * 1e-9);
        Assert.True(push.IsLaminar);
        Assert.Contains(FormattableString.Invariant($"{push.Duration.Value.Minutes:F1} min"), push.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain(push.Findings, finding => finding.Subject == FindingSubject.Estimate);
    }

    /// <summary>Laminar with a falling level: t = m/(k·(Δp1 − Δp2))·ln(Δp1/Δp2), ṁ = k·Δp. The oil is so thick that entrance and exit take less than 1e-5.</summary>
    [Fact]
    public void A_falling_level_is_that_of_the_closed_form()
    {
        double k = Math.PI * 950 * Math.Pow(0.01, 4) / (128 * 10.0 * 2);
        double last = 2000 - (950 * Gravity * 0.15);
        double first = last + (950 * Gravity * 0.5);
        double expected = 4 / (k * (first - last)) * Math.Log(first / last);

        OilToDrain oil = Oil(10, 10, 2, rise: 0.15) with { Depth = Length.FromMeters(0.5) };

        Assert.Equal(expected, OilPush.At(oil, Pressure.FromPascals(2000)).Duration!.Value.Seconds, expected * 1e-5);
    }

    /// <summary>Turbulent: Blasius, f = 0.3164/Re^0.25 for smooth pipes, good to some 5 % from Re 4000 to 1e5 (any text on fluid mechanics).</summary>
    [Fact]
    public void Thin_oil_flows_turbulent_with_the_friction_of_a_smooth_pipe()
    {
        OilPush push = OilPush.At(Oil(0.002, 10, 20, roughness: 0), Pressure.FromKilopascals(100));
        double area = Math.PI * 1e-4 / 4;
        double velocity = push.InitialFlow.KilogramsPerSecond / (950 * area);
        double factor = (100e3 / (0.5 * 950 * velocity * velocity) - 1.5) / (20 / 0.01);
        Assert.InRange(push.ReynoldsNumber, 4000, 1e5);
        Assert.Equal(0.3164 / Math.Pow(push.ReynoldsNumber, 0.25), factor, factor * 0.05);
        Assert.False(push.IsLaminar);
        Assert.Contains("turbulent; friction", Assert.Single(push.Findings, finding => finding.Subject == FindingSubject.Estimate).Message, StringComparison.Ordinal);
    }

    /// <summary>Through laminar, transition and turbulent flow the time is the integral of dm/ṁ: against midpoints of the mass, each flow on its own.</summary>
    [Theory]
    [InlineData(0.02, 10, 3, 0.5)]
    [InlineData(0.008, 8, 3, 2)]
    [InlineData(0.003, 8, 3, 1)]
    public void Time_is_the_integral_of_the_flow(double viscosity, double millimeters, double kilopascals, double depth)
    {
        const int Steps = 4000;
        double sum = 0;
        for (int i = 0; i < Steps; i++)
        {
            double head = 950 * Gravity * depth * (i + 0.5) / Steps;
            OilPush moment = OilPush.At(Oil(viscosity, millimeters, 2), Pressure.FromPascals((kilopascals * 1000) + head));
            sum += 4.0 / Steps / moment.InitialFlow.KilogramsPerSecond;
        }

        OilPush push = OilPush.At(Oil(viscosity, millimeters, 2) with { Depth = Length.FromMeters(depth) }, Pressure.FromKilopascals(kilopascals));
        Assert.Equal(sum, push.Duration!.Value.Seconds, sum * 1e-3);
    }

    [Property(MaxTest = 200)]
    public Property The_pressure_for_a_time_takes_that_time() => Prop.ForAll(
        Gen.Choose(0, 1000).Select(i => i / 1000.0).ArrayOf(6).ToArbitrary(),
        u =>
        {
            OilToDrain oil = Oil(Math.Pow(10, -3 + (3 * u[0])), 4 + (16 * u[1]), 0.5 + (10 * u[2]), rise: -1 + (3 * u[3])) with { Depth = Length.FromMeters(u[4]) };
            OilPush given = OilPush.At(oil, Pressure.FromPascals(100 + (300e3 * u[5])));
            if (given.Duration is not Duration time)
            {
                return given.Findings[0].Severity == Severity.Stop;
            }

            OilPush found = OilPush.Within(oil, time);
            return Math.Abs((found.Duration!.Value / time) - 1) < 1e-8
                && Math.Abs(found.GaugePressure.Pascals - given.GaugePressure.Pascals) < 1e-6 * (given.GaugePressure.Pascals + 1e4);
        });

    /// <summary>Thicker oil is slower as long as it flows laminar; where turbulence sets in, a little more viscosity can hold it off and be quicker.</summary>
    [Property(MaxTest = 200)]
    public Property More_pressure_is_quicker_and_thicker_oil_slower() => Prop.ForAll(
        Gen.Choose(0, 1000).Select(i => i / 1000.0).ArrayOf(4).ToArbitrary(),
        u =>
        {
            double viscosity = Math.Pow(10, -3 + (3 * u[0]));
            double bore = 4 + (16 * u[1]);
            double length = 0.5 + (10 * u[2]);
            Pressure gauge = Pressure.FromPascals(1000 + (300e3 * u[3]));
            OilPush push = OilPush.At(Oil(viscosity, bore, length), gauge);
            double time = push.Duration!.Value.Seconds;
            return OilPush.At(Oil(viscosity, bore, length), gauge * 1.1).Duration!.Value.Seconds < time
                && (!push.IsLaminar || OilPush.At(Oil(viscosity * 1.1, bore, length), gauge).Duration!.Value.Seconds > time)
                && OilPush.At(Oil(viscosity, bore * 1.1, length), gauge).Duration!.Value.Seconds < time
                && OilPush.At(Oil(viscosity, bore, length * 1.1), gauge).Duration!.Value.Seconds > time;
        });

    [Fact]
    public void Oil_that_runs_by_itself_needs_no_pressure()
    {
        OilToDrain oil = Oil(0.05, 10, 2, rise: -1);
        double itself = OilPush.At(oil, Pressure.Zero).Duration!.Value.Seconds;
        OilPush push = OilPush.Within(oil, Duration.FromSeconds(2 * itself));
        Assert.Equal(0, push.GaugePressure.Pascals);
        Assert.Equal(itself, push.Duration!.Value.Seconds, 1e-9);
        Assert.Empty(push.Findings);
    }

    [Fact]
    public void Oil_that_must_rise_too_far_does_not_run_out()
    {
        OilPush push = OilPush.At(Oil(0.05, 10, 2, rise: 2) with { Depth = Length.FromMeters(1) }, Pressure.FromKilopascals(18));
        Assert.Null(push.Duration);
        Assert.True(push.InitialFlow.KilogramsPerSecond > 0);
        Assert.Equal(Severity.Stop, push.Findings[0].Severity);
        Assert.NotNull(OilPush.At(push.Oil, Pressure.FromKilopascals(19)).Duration);
    }

    /// <summary>With the last oil just lifted by the pressure the time has a longest value; what is asked beyond it gets that.</summary>
    [Fact]
    public void A_long_time_takes_the_pressure_that_just_lifts_the_oil()
    {
        OilToDrain oil = Oil(0.05, 10, 2, rise: 1) with { Depth = Length.FromMeters(1) };
        OilPush push = OilPush.Within(oil, Duration.FromDays(100));
        Assert.Equal(950 * Gravity, push.GaugePressure.Pascals, 0.01);
        Assert.True(push.Duration < Duration.FromDays(100));
    }

    [Fact]
    public void Oil_at_rest_has_no_flow()
    {
        OilPush push = OilPush.At(Oil(0.05, 10, 2, rise: 2), Pressure.Zero);
        Assert.Equal(0, push.InitialFlow.KilogramsPerSecond);
        Assert.Equal(0, push.ReynoldsNumber);
        Assert.Null(push.Duration);
        Assert.Equal("4 kg of oil at 0.0 kPa gauge: does not run out, Re 0", push.ToString());
    }

    [Fact]
    public void Lighter_oil_is_lifted_by_less()
    {
        OilToDrain heavy = Oil(0.05, 10, 2, rise: 2);
        Pressure between = Pressure.FromPascals(2 * 900 * Gravity);
        Assert.Null(OilPush.At(heavy, between).Duration);
        Assert.NotNull(OilPush.At(heavy with { Density = Density.FromKilogramsPerCubicMeter(850) }, between).Duration);
    }

    [Theory]
    [InlineData(0.012, 2500, "neither laminar nor fully turbulent")]
    [InlineData(0.005, 4900, "turbulent; friction")]
    public void Beyond_laminar_flow_it_says_so(double viscosity, double reynolds, string words)
    {
        Pressure gauge = Pressure.FromKilopascals(20);
        OilPush push = OilPush.At(Oil(viscosity, 16, 6), gauge);
        Assert.InRange(push.ReynoldsNumber, reynolds * 0.7, reynolds * 1.3);
        Assert.Contains(push.Findings, finding => finding.Subject == FindingSubject.Estimate && finding.Message.Contains(words, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(4.9, false, 40, new[] { Severity.Caution })]
    [InlineData(5.1, false, 40, new[] { Severity.Warning, Severity.Caution })]
    [InlineData(5.1, false, 30, new[] { Severity.Stop, Severity.Warning, Severity.Caution })]
    [InlineData(4.9, true, 0, new[] { Severity.Caution, Severity.Caution })]
    public void Limits_of_pressure_are_said(double psig, bool unknown, double allowable, Severity[] expected)
    {
        OilToDrain oil = Oil(0.1, 8, 2) with { AllowableGaugePressure = unknown ? null : Pressure.FromKilopascals(allowable) };
        OilPush push = OilPush.At(oil, Pressure.FromPascals(psig * PascalsPerPsi));
        Assert.Equal(expected, push.Findings.Select(finding => finding.Severity));
        Assert.Contains(push.Findings, finding => finding.Message.Contains("dry nitrogen only", StringComparison.Ordinal));
        Assert.Equal(psig > 5, push.Findings.Any(finding => finding.Source == "40 CFR 82.156(a)(1)(iii)"));
    }

    [Fact]
    public void A_time_that_no_pressure_meets_is_refused()
    {
        OilToDrain oil = Oil(1, 4, 10);
        Assert.Contains("10 MPa", Assert.Throws<ArgumentOutOfRangeException>("time", () => OilPush.Within(oil, Duration.FromSeconds(0.01))).Message, StringComparison.Ordinal);
        Assert.Contains(
            "does not run out",
            Assert.Throws<ArgumentOutOfRangeException>("time", () => OilPush.Within(Oil(1, 4, 10, rise: 1000) with { Hoses = [.. Enumerable.Repeat(oil.Hoses[0] with { Rise = Length.FromMeters(600) }, 2)] }, Duration.FromHours(1))).Message,
            StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>("time", () => OilPush.Within(oil, Duration.Zero));
        Assert.Throws<ArgumentOutOfRangeException>("gaugePressure", () => OilPush.At(oil, Pressure.FromPascals(-1)));
        Assert.Throws<ArgumentException>("Hoses", () => oil with { Hoses = [] });
    }

    private static OilToDrain Oil(double viscosity, double millimeters, double meters, double rise = 0, double? roughness = null)
    {
        Hose hose = new() { Length = Length.FromMeters(meters), InnerDiameter = Length.FromMillimeters(millimeters), Rise = Length.FromMeters(rise) };
        return new OilToDrain
        {
            Mass = Mass.FromKilograms(4),
            Viscosity = DynamicViscosity.FromPascalSeconds(viscosity),
            Hoses = [roughness is double wall ? hose with { Roughness = Length.FromMeters(wall) } : hose],
        };
    }
}
