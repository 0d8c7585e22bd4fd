using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;
using Refrigerant.Recovery.Rules;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>Each trigger in a job brings its caution and no other; the closing one is always last.</summary>
public sealed class PlanCautionTests
{
    private const string Closing = "Local codes and licensed practice govern.";

    private static readonly Dictionary<string, Func<RecoveryJob>> Triggered = new()
    {
        ["nothing"] = () => Bland(),
        ["burns (A3)"] = () => Bland("R-601", 45),
        ["toxic (B1)"] = () => Bland("R-245fa"),
        ["boils below 0 °C"] = () => Bland("R-124"),
        ["critical point below 40 °C"] = () => Bland("R-13"),
        ["very high-pressure, burns (A2L)"] = () => Bland("R-32"),
        ["discharge hose"] = () => Bland() is var job ? job with { Hoses = job.Hoses with { Discharge = [Jobs.Hose()] } } : job,
        ["near the limit"] = () => Bland() is var job
            ? job with { Cylinders = [Jobs.Cylinder(30) with { Content = Mass.FromKilograms(13), Refrigerant = "R-114" }] }
            : job,
        ["water"] = () => With(appliance => appliance with
        {
            Water = TubeWater.Standing(Mass.FromKilograms(20), Temperature.FromDegreesCelsius(20), ThermalResistance.FromSquareMeterKelvinsPerWatt(0.01)),
        }),
        ["oil"] = () => With(appliance => appliance with { Oil = new ApplianceOil { Mass = Mass.FromKilograms(0.3), Kind = OilKind.Mineral, RefrigerantFraction = Ratio.FromPercent(10) } }),
        ["much vapor"] = () => With(appliance => appliance with { Charge = Mass.FromKilograms(10), InternalVolume = Volume.FromLiters(12) }),
        ["hot discharge"] = () => Bland() is var job
            ? job with { Machine = job.Machine with { IsentropicEfficiency = 0.1, LowPressureSwitch = Pressure.FromKilopascals(110) }, Cylinders = [job.Cylinders[0] with { Content = Mass.FromKilograms(5) }] }
            : job,
        ["below the air"] = () => Bland() is var job
            ? job with
            {
                Machine = job.Machine with { LowPressureSwitch = null },
                Evacuation = new EvacuationOptions { OwnLevel = Pressure.FromKilopascals(70) },
            }
            : job,
        ["boils far below 0 °C"] = () => Bland("R-14", -60),
        ["turns to dry ice"] = () => Bland("R-744", -20),
        ["no liquid at this warmth"] = () => Bland("R-13", 20, 35) is var job ? job with { Hoses = job.Hoses with { Discharge = [Jobs.Hose()] } } : job,
    };

    public static TheoryData<string, FindingSubject[]> Cases() => new()
    {
        { "nothing", [] },
        { "burns (A3)", [FindingSubject.Flammability] },
        { "toxic (B1)", [FindingSubject.Toxicity] },
        { "boils below 0 °C", [FindingSubject.Frostbite] },
        { "critical point below 40 °C", [FindingSubject.CylinderPressure, FindingSubject.Frostbite] },
        { "very high-pressure, burns (A2L)", [FindingSubject.Flammability, FindingSubject.CylinderPressure, FindingSubject.Frostbite] },
        { "discharge hose", [FindingSubject.TrappedLiquid] },
        { "near the limit", [FindingSubject.CylinderOverfill] },
        { "water", [FindingSubject.Freezing] },
        { "oil", [FindingSubject.Oil] },
        { "much vapor", [FindingSubject.Asphyxiation] },
        { "hot discharge", [FindingSubject.HotSurface] },
        { "below the air", [FindingSubject.NonCondensables] },
        { "boils far below 0 °C", [FindingSubject.CylinderPressure, FindingSubject.Frostbite] },
        { "turns to dry ice", [FindingSubject.CylinderPressure, FindingSubject.Toxicity, FindingSubject.Freezing, FindingSubject.Frostbite] },
        { "no liquid at this warmth", [FindingSubject.CylinderPressure, FindingSubject.Frostbite] },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_trigger_brings_its_caution_and_no_other(string trigger, FindingSubject[] expected) =>
        Assert.Equal(expected.Append(FindingSubject.Safety), RecoveryPlanner.Plan(Triggered[trigger]()).Cautions.Select(caution => caution.Subject));

    [Theory]
    [InlineData("R-134a", 60, 2)]
    [InlineData("R-32", 10, 1)]
    [InlineData("R-123", 100, 4)]
    [InlineData("R-744", 5, 0)]
    [InlineData("R-717", 60, 1)]
    public void The_closing_caution_is_last_and_the_others_heaviest_first(string fluid, double kilograms, int cylinders)
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller(fluid, kilograms, cylinders: cylinders, litersPerKilogram: 4));
        Finding[] others = [.. plan.Cautions.SkipLast(1)];
        Assert.EndsWith(Closing, plan.Cautions[^1].Message, StringComparison.Ordinal);
        Assert.DoesNotContain(others, caution => caution.Message.Contains(Closing, StringComparison.Ordinal));
        Assert.Equal(others.OrderByDescending(caution => caution.Severity), others);
        Assert.Equal(plan.Cautions.Count, plan.Cautions.Concat(plan.Findings).Select(finding => finding.Message).Distinct().Count() - plan.Findings.Count);
        Assert.All(plan.Cautions, caution => Assert.NotEmpty(caution.Source));
        string[] warnings = [.. plan.Findings.Concat(plan.Cautions).Where(finding => finding.Severity >= Severity.Caution).GroupBy(finding => finding.Code).Select(group => group.Max(finding => finding.Severity).ToString())];
        Assert.EndsWith(
            FormattableString.Invariant($"; {Counted(warnings, "Warning")}, {Counted(warnings, "Caution")}"), plan.ToString(), StringComparison.Ordinal);

        static string Counted(string[] severities, string severity)
        {
            int count = severities.Count(one => one == severity);
            return FormattableString.Invariant($"{count} {severity.ToLowerInvariant()}{(count == 1 ? "" : "s")}");
        }
    }

    /// <summary>Ammonia is lighter than air, R-134a heavier (17.0 and 102.0 against 29.0 g/mol).</summary>
    [Theory]
    [InlineData("R-717", false)]
    [InlineData("R-134a", true)]
    public void Where_vapor_gathers_depends_on_its_weight(string fluid, bool heavy)
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller(fluid, 20, litersPerKilogram: 4));
        Finding caution = Assert.Single(plan.Cautions, caution => caution.Subject == FindingSubject.Asphyxiation);
        Assert.Equal(heavy, caution.Message.Contains("heavier than air", StringComparison.Ordinal));
    }

    [Fact]
    public void Documents_carry_them()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Bland("R-245fa"));
        string[] expected = [.. plan.Cautions.Select(caution => caution.Message)];
        Assert.Equal(expected, PlanDocument.From(plan).Cautions.Select(entry => entry.Message));
        RecoveryRecord record = RecoveryRecord.From(
            plan, new RecordFacts { Company = "Example Cooling", Location = "Example Street 1", Date = new DateTime(2026, 11, 25) });
        Assert.Equal(expected, RecoveryRecordJson.Read(RecoveryRecordJson.Write(record)).Cautions.Select(entry => entry.Message));
    }

    /// <summary>A small charge that does not burn or poison, boils above 0 °C and stays above the air; a cylinder with ample room; no hose with liquid in it.</summary>
    private static RecoveryJob Bland(string fluid = "R-114", double celsius = 20, double? surroundings = null)
    {
        Fluid refrigerant = Fluid.Get(fluid);
        double saturation = refrigerant.SaturationAt(Temperature.FromDegreesCelsius(celsius)).Dew.Pressure.Kilopascals;
        return new RecoveryJob
        {
            Appliance = new Appliance
            {
                Fluid = refrigerant,
                Charge = Mass.FromKilograms(1),
                InternalVolume = Volume.FromLiters(3),
                Temperature = Temperature.FromDegreesCelsius(celsius),
                Surroundings = Temperature.FromDegreesCelsius(surroundings ?? celsius),
                HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.01),
            },
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)) with { LowPressureSwitch = Pressure.FromKilopascals(0.9 * saturation) },
            Hoses = new HoseSet { VaporSide = [Jobs.Hose()] },
            Cylinders = [fluid is "R-13" or "R-14" or "R-744" ? RecoveryCylinder.FromMark("3AA1800", Mass.FromPounds(123), Mass.FromPounds(150)) : Jobs.Cylinder(123)],
        };
    }

    private static RecoveryJob With(Func<Appliance, Appliance> change)
    {
        RecoveryJob job = Bland();
        return job with { Appliance = change(job.Appliance) };
    }
}
