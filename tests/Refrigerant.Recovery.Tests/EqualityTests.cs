using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using System.Runtime.CompilerServices;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Records;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Tests.Estimation.Calibration;
using Refrigerant.Recovery.Tests.Planning;
using Refrigerant.Recovery.Tests.Records;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests;

/// <summary>A value equals another of the same members, wherever it came from.</summary>
public class EqualityTests
{
    private static readonly Assembly Library = typeof(Fluid).Assembly;

    /// <summary>Public types that are no values, with the reason.</summary>
    private static readonly Dictionary<Type, string> NoValues = new()
    {
        [typeof(RecoverySimulation)] = "it runs",
        [typeof(RecoveryMonitor)] = "it runs",
        [typeof(RecoveryEstimator)] = "it runs",
        [typeof(StandardStrategy)] = "it decides; there is one",
        [typeof(PlanSituation)] = "a view of a plan that is being made",
        [typeof(CylinderStanding)] = "a view of a plan that is being made",
        [typeof(DocumentJsonConverter<>)] = "it converts",
        [typeof(TrappedLiquid)] = "it asks the refrigerant's equation anew for each temperature",
        [typeof(Trajectory)] = "a course of hundreds of points: compare its points",
        [typeof(StageResult)] = "it holds a course",
        [typeof(HoseSweepResult)] = "it holds a course",
        [typeof(FractionationPoint)] = "it asks the refrigerant's equation anew",
        [typeof(FractionationResult)] = "it holds a course",
        [typeof(PlannedStage)] = "it holds a course",
        [typeof(RecoveryPlan)] = "it holds the courses of its stages: compare its document",
        [typeof(PlanChoice)] = "it holds plans",
        [typeof(SetupComparison)] = "it holds plans",
        [typeof(SetupOutcome)] = "it holds a plan",
        [typeof(PlanUncertainty)] = "it holds a sample of plans",
        [typeof(JobCalibration)] = "it holds the residuals of a log",
    };

    /// <summary>A record is only as equal as its members: none may be compared by reference.</summary>
    [Fact]
    public void No_record_holds_what_is_compared_by_reference()
    {
        string[] wrong =
        [
            .. (from type in Library.GetTypes()
                where type.GetMethod("<Clone>$") is not null && type.IsVisible && type.GetMethod(nameof(Equals), [type])!.GetCustomAttribute<CompilerGeneratedAttribute>() is not null
                from field in Fields(type)
                from held in Held(field.FieldType)
                where held.IsClass && held.GetMethod(nameof(Equals), [typeof(object)])!.DeclaringType == typeof(object)
                select $"{type.Name}.{field.Name}: {held.Name}").Distinct().Order(StringComparer.Ordinal),
        ];
        Assert.True(wrong.Length == 0, string.Join(Environment.NewLine, wrong));
    }

    /// <summary>What a caller compares is compared by value, with == as with Equals.</summary>
    [Fact]
    public void Every_value_type_has_operators_and_equality()
    {
        string[] without =
        [
            .. from type in Library.GetExportedTypes()
               where (type.IsValueType && !type.IsEnum) || (type.IsClass && !type.IsAbstract && !typeof(Exception).IsAssignableFrom(type) && !typeof(Delegate).IsAssignableFrom(type))
               where !NoValues.ContainsKey(type.IsGenericType ? type.GetGenericTypeDefinition() : type)
               where !type.GetInterfaces().Any(i => i.IsGenericType && i.GetGenericTypeDefinition() == typeof(IEquatable<>) && i.GenericTypeArguments[0].Name == type.Name)
                   || type.GetMethod("op_Equality") is null || type.GetMethod("op_Inequality") is null
               select type.FullName,
        ];
        Assert.True(without.Length == 0, string.Join(Environment.NewLine, without));
        Assert.All(NoValues.Keys, type => Assert.Null(type.GetMethod("op_Equality")));
    }

    [Fact]
    public void Computed_twice_they_are_equal()
    {
        Refrigerant.Recovery.Equipment.Appliance appliance = Jobs.Chiller("R-407C").Appliance;
        Refrigerant.Recovery.Equipment.RecoveryCylinder cylinder = Jobs.Chiller().Cylinders[0];
        Fluid One() => Fluid.Blend(new Dictionary<string, double> { ["R-32"] = 0.3, ["R-134a"] = 0.7 }, "house");
        Func<object>[] computed =
        [
            () => One().SaturationAt(Temperature.FromDegreesCelsius(20)),
            () => One().StateAt(Temperature.FromDegreesCelsius(20), Pressure.FromKilopascals(100)),
            () => One().ClosedVesselAt(Temperature.FromDegreesCelsius(20), Density.FromKilogramsPerCubicMeter(500)),
            () => CylinderFill.Limit(cylinder, appliance.Fluid),
            () => RefrigerantFacts.For(One()),
            () => EvacuationRequirement.For(One(), Mass.FromKilograms(50)),
            () => Residuals(appliance),
            () => RecoveryPlanner.Plan(Jobs.Chiller()).Ledger,
            () => RecoveryPlanner.Plan(Jobs.Chiller()).Findings[0],
            () => RecoveryPlanner.Plan(Jobs.Chiller()).Stages[^1].Hookup,
            () => RecoveryPlanner.Plan(Jobs.Chiller()).Course().ToArray()[^1].Point,
        ];
        Assert.All(computed, make =>
        {
            object first = make(), second = make();
            Assert.True(first.Equals(second), first.ToString());
            Assert.Equal(first.GetHashCode(), second.GetHashCode());
        });
        Assert.False(One().SaturationAt(Temperature.FromDegreesCelsius(20)) == Fluid.Get("R-32").SaturationAt(Temperature.FromDegreesCelsius(20)));
        Assert.True(One() == One());
        Assert.True(One() != Fluid.Get("R-32"));
    }

    [Fact]
    public void Two_readings_of_one_job_are_equal()
    {
        RecoveryJob full = FullJob.Create();
        RecoveryJob blend = full with { Appliance = full.Appliance with { Fluid = FullJob.Blend() } };
        foreach (RecoveryJob job in new[] { full, blend, Jobs.Chiller(), full with { Evacuation = new EvacuationOptions { Rules = Own() } } })
        {
            Same(RecoveryJobJson.Write(job), RecoveryJobJson.Read);
        }
    }

    [Fact]
    public void Two_readings_of_one_plan_record_and_log_are_equal()
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller());
        Same(RecoveryPlanJson.Write(plan, course: true), RecoveryPlanJson.Read);
        Same(RecoveryRecordJson.Write(RecoveryRecordTests.Measured()), RecoveryRecordJson.Read);
        Same(JobLogJson.Write(ExampleLog.Create()), JobLogJson.Read);
        Same(JobLogCsv.Write(ExampleLog.Create()), JobLogCsv.Read);
    }

    /// <summary>Rules of the caller's own come back from a document as what they were.</summary>
    [Property]
    public bool Own_rules_come_back(PositiveInt pascals, NonNull<string> place, NonNull<string> source, byte share, bool ownFill)
    {
        string name = Plain(place.Get), from = Plain(source.Get);
        FillRules fill = ownFill
            ? FillRules.FromCaller(name, Ratio.FromPercent(1 + (share % 100)), Temperature.FromKelvins(250 + share), from)
            : new[] { FillRules.UnitedStates, FillRules.UnitedNations, FillRules.EuropeanUnion, FillRules.Japan, FillRules.Canada }[share % 5];
        RuleSet rules = RuleSet.FromCaller(name, Pressure.FromPascals(pascals.Get), fill, from);
        RecoveryJob job = Jobs.Chiller() with { Evacuation = new EvacuationOptions { Rules = rules } };
        RuleSet back = RecoveryJobJson.Read(RecoveryJobJson.Write(job)).Evacuation!.Rules;
        return back == rules && back.Fill == fill
            && Level(back) is { } level && level.Rule.Source == from && Math.Abs(level.RequiredPressure.Pascals - pascals.Get) <= 1e-9 * pascals.Get
            && !back.Equals(RuleSet.FromCaller(name, Pressure.FromPascals(pascals.Get + 1), fill, from));
    }

    [Fact]
    public void Own_rules_that_differ_are_not_equal()
    {
        Assert.NotEqual(Own(), RuleSet.FromCaller("here", Pressure.FromKilopascals(50), FillRules.Japan, "contract"));
        Assert.NotEqual(FillRules.FromCaller("here", Ratio.FromPercent(80), Temperature.FromDegreesCelsius(20), "a"), FillRules.FromCaller("here", Ratio.FromPercent(80), Temperature.FromDegreesCelsius(21), "a"));
        Assert.NotEqual(RuleSet.EuropeanUnion, RuleSet.Spain);
    }

    [Fact]
    public void States_are_equal_by_what_they_hold()
    {
        Refrigerant.Recovery.Equipment.Appliance appliance = Jobs.Chiller().Appliance;
        ApplianceState one = ApplianceState.Initial(appliance), same = ApplianceState.Initial(appliance with { });
        Assert.Equal(one, same);
        Assert.Equal(one.GetHashCode(), same.GetHashCode());
        Assert.NotEqual(one, ApplianceState.FromMeasured(appliance, appliance.Charge * 0.5, appliance.Temperature));
        Refrigerant.Recovery.Equipment.RecoveryCylinder cylinder = Jobs.Chiller().Cylinders[0];
        CylinderState full = CylinderState.Initial(cylinder, appliance.Fluid, appliance.Temperature);
        Assert.Equal(new SimulationState(one, full), new SimulationState(same, CylinderState.Initial(cylinder, appliance.Fluid, appliance.Temperature)));
        Assert.NotEqual(full, CylinderState.Initial(cylinder, appliance.Fluid, appliance.Temperature, AmountOfSubstance.FromMoles(1)));
    }

    [Fact]
    public void Logs_that_differ_are_not_equal()
    {
        JobLog log = ExampleLog.Create();
        Assert.NotEqual(log, JobLog.FromReadings([.. log.Readings.Skip(1)]));
    }

    private static RuleSet Own() => RuleSet.FromCaller(
        "here", Pressure.FromKilopascals(50), FillRules.FromCaller("here too", Ratio.FromPercent(75), Temperature.FromDegreesCelsius(20), "contract"), "contract");

    private static EvacuationRequirement Level(RuleSet rules) =>
        EvacuationRequirement.For(Fluid.Get("R-134a"), Mass.FromKilograms(60), new EvacuationOptions { Rules = rules });

    private static Refrigerant.Recovery.Residuals.ResidualCharge Residuals(Refrigerant.Recovery.Equipment.Appliance appliance) =>
        Refrigerant.Recovery.Residuals.ResidualCharge.Estimate(appliance.Fluid, appliance.InternalVolume, appliance.Temperature, Pressure.FromKilopascals(50));

    private static string Plain(string text) => new([.. text.Where(c => !char.IsSurrogate(c)), '.']);

    private static void Same<T>(string text, Func<string, T> read)
        where T : class
    {
        T one = read(text), two = read(text);
        Assert.NotSame(one, two);
        Assert.True(one.Equals(two), one.ToString());
        Assert.Equal(one.GetHashCode(), two.GetHashCode());
    }

    private static IEnumerable<FieldInfo> Fields(Type? type) => type is null || type == typeof(object)
        ? []
        : type.GetFields(BindingFlags.Instance | BindingFlags.NonPublic | BindingFlags.Public | BindingFlags.DeclaredOnly).Concat(Fields(type.BaseType));

    /// <summary>The type itself, or what a list or an optional value of it holds; engines and what only speeds work up are no values.</summary>
    private static IEnumerable<Type> Held(Type type) =>
        type.IsGenericType && type.Namespace!.StartsWith("System", StringComparison.Ordinal) ? type.GenericTypeArguments.SelectMany(Held)
        : type == typeof(object) || type == typeof(FlashTable) || typeof(PropertyModel).IsAssignableFrom(type) ? []
        : [type];
}
