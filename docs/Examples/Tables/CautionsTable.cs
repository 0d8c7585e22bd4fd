using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Docs.Questions;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Rules;
using UnitsNet;

namespace Refrigerant.Recovery.Docs.Tables;

/// <summary>Cases that trigger the cautions, and what the results then say.</summary>
internal static class CautionsTable
{
    private static readonly Fluid R134a = Fluid.Get("R-134a");

    private static readonly RecoveryCylinder Cylinder =
        RecoveryCylinder.FromMark("DOT-4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5)) with { Label = "C1" };

    public static void Print()
    {
        Console.WriteLine("| case | subject | what the result says |");
        Console.WriteLine("|---|---|---|");
        RecoveryJob job = ExampleJob.Create();
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        RecoveryPlan small = RecoveryPlanner.Plan(job with { Cylinders = [job.Cylinders[0]] });
        StageResult cold = OneStage.WithHeat(1e6);

        Row("The cylinder holds more than its limit", FindingSubject.CylinderOverfill, Fill(Cylinder with { Content = Mass.FromKilograms(22), Refrigerant = "R-134a" }));
        Row("Its retest is overdue", FindingSubject.CylinderFitness, Fill(Cylinder with { RequalificationDue = new DateTime(2026, 1, 31) }));
        Row("It is a non-refillable one", FindingSubject.CylinderFitness, Fill(RecoveryCylinder.FromMark("DOT-39 260", Mass.FromPounds(30), Mass.FromPounds(6))));
        Row(
            "It is too weak for the refrigerant",
            FindingSubject.CylinderPressure,
            CylinderFill.Limit(RecoveryCylinder.FromMark("DOT-4BW260", Mass.FromPounds(47.6), Mass.FromPounds(27.5)), Fluid.Get("R-410A")).Findings);
        Row("It last held another refrigerant", FindingSubject.Mixing, Fill(Cylinder with { Refrigerant = "R-22" }));
        Row("The cylinders on hand do not hold the charge", FindingSubject.CylinderCapacity, small.Findings);
        Row("Cold liquid is shut in between two valves", FindingSubject.TrappedLiquid, TrappedLiquid.ShutIn(R134a, Temperature.FromDegreesCelsius(0)).Findings);
        Row("Push-pull is used", FindingSubject.PushPull, plan.Findings);
        Row("The appliance holds oil", FindingSubject.Oil, plan.Cautions);
        Row("The charge makes much vapor", FindingSubject.Asphyxiation, plan.Cautions);
        Row("The refrigerant boils below 0 °C", FindingSubject.Frostbite, plan.Cautions);
        Row("The appliance comes below the air's pressure", FindingSubject.NonCondensables, plan.Cautions);
        Row("Water stands in the tubes", FindingSubject.Freezing, WithWater(job));
        Row("The level is reached over cold liquid", FindingSubject.LiquidLeftBehind, cold.Findings);
        Row(
            "The gauge is read at altitude",
            FindingSubject.VacuumAndAltitude,
            EvacuationRequirement.For(R134a, job.Appliance.Charge, new EvacuationOptions { Barometer = Barometer.AtElevation(Length.FromMeters(1600)) }).Findings);
        Row("The level is not reached", FindingSubject.EvacuationLevel, small.Findings);
        Row("The refrigerant burns", FindingSubject.Flammability, RefrigerantFacts.For(Fluid.Get("R-32")).Findings);
        Row("The refrigerant is toxic", FindingSubject.Toxicity, RefrigerantFacts.For(Fluid.Get("R-123")).Findings);
        Row(
            "The refrigerant is carbon dioxide",
            FindingSubject.Freezing,
            RecoveryPlanner.Plan(job with { Appliance = job.Appliance with { Fluid = Fluid.Get("R-744"), Charge = Mass.FromKilograms(5) } }).Cautions);
        Row(
            "Air is in the cylinder",
            FindingSubject.NonCondensables,
            NonCondensableTest.Judge(
                R134a, Pressure.FromKilopascals(750), Temperature.FromDegreesCelsius(25), Pressure.FromKilopascals(5), TemperatureDelta.FromKelvins(0.5)).Findings);
        Row("The discharge gets hot", FindingSubject.Machine, Hot(job));
        Row("A value was not given", FindingSubject.Estimate, VaporOnly(job, job.Appliance with { HeatResistance = null }).Findings);
        Row("Always, with a plan", FindingSubject.Safety, plan.Cautions);
    }

    private static IReadOnlyList<Finding> Fill(RecoveryCylinder cylinder) =>
        CylinderFill.Limit(cylinder, R134a, new FillOptions { Today = new DateTime(2026, 11, 25) }).Findings;

    private static IReadOnlyList<Finding> WithWater(RecoveryJob job) => VaporOnly(job, job.Appliance with
    {
        Water = TubeWater.Standing(
            Mass.FromKilograms(5), Temperature.FromDegreesCelsius(10), ThermalResistance.FromSquareMeterKelvinsPerWatt(0.002)),
        HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.1),
    }).Findings;

    private static IReadOnlyList<Finding> Hot(RecoveryJob job) => VaporOnly(
        job,
        job.Appliance with { Fluid = Fluid.Get("R-32"), Temperature = Temperature.FromDegreesCelsius(30), Charge = Mass.FromKilograms(5) }).Findings;

    private static StageResult VaporOnly(RecoveryJob job, Appliance appliance) => VaporRecovery.Simulate(
        appliance,
        job.Machine,
        job.Hoses,
        job.Cylinders[0],
        new VaporRecoveryOptions { TargetPressure = Barometer.Standard.FromVacuum(Mercury.FromInches(10)) });

    private static void Row(string when, FindingSubject subject, IReadOnlyList<Finding> findings)
    {
        Finding finding = findings.Where(f => f.Subject == subject).OrderByDescending(f => f.Severity).First();
        Console.WriteLine($"| {when} | `{subject}` | **{finding.Severity}:** {finding.Message} |");
    }
}
