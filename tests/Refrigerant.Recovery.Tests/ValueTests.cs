using System;
using System.Collections;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Reflection;
using System.Runtime.CompilerServices;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Records;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Tests.Estimation.Calibration;
using Refrigerant.Recovery.Tests.Planning;
using Refrigerant.Recovery.Tests.Processes;
using Refrigerant.Recovery.Tests.Records;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests;

/// <summary>What is handed out is a value: it says something, the same in every culture, and cannot be changed by a cast.</summary>
public class ValueTests
{
    private static readonly Assembly Library = typeof(Fluid).Assembly;

    private static readonly object[] Roots = [.. MakeRoots()];

    [Fact]
    public void Every_public_type_says_something()
    {
        string[] silent =
        [
            .. from type in Library.GetExportedTypes()
               where !type.IsEnum && !type.IsInterface && !(type.IsAbstract && type.IsSealed) && !typeof(Delegate).IsAssignableFrom(type) && !typeof(Exception).IsAssignableFrom(type)
               where !typeof(PropertyModel).IsAssignableFrom(type) && !typeof(System.Text.Json.Serialization.JsonConverter).IsAssignableFrom(type)
               let says = type.GetMethod(nameof(ToString), Type.EmptyTypes)!
               where says.DeclaringType!.Assembly != Library || says.GetCustomAttribute<CompilerGeneratedAttribute>() is not null
               select type.FullName,
        ];
        Assert.True(silent.Length == 0, string.Join(Environment.NewLine, silent));
    }

    [Fact]
    public void What_is_said_is_the_same_in_every_culture()
    {
        object[] values = [.. Walk()];
        CultureInfo before = CultureInfo.CurrentCulture;
        string[] invariant = [.. values.Select(v => v.ToString()!)];
        try
        {
            var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            comma.NumberFormat = new NumberFormatInfo { NumberDecimalSeparator = ",", NumberGroupSeparator = ".", NegativeSign = "~" };
            comma.DateTimeFormat = new DateTimeFormatInfo { ShortDatePattern = "dd/yyyy/MM", DateSeparator = "#" };
            CultureInfo.CurrentCulture = comma;
            string[] other = [.. values.Select(v => v.ToString()!)];
            string[] differ = [.. invariant.Zip(other, (a, b) => (a, b)).Where(pair => pair.a != pair.b).Select(pair => $"{pair.a} / {pair.b}").Distinct()];
            Assert.True(differ.Length == 0, string.Join(Environment.NewLine, differ));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void No_list_that_is_handed_out_can_be_changed_by_a_cast()
    {
        string[] open =
        [
            .. (from value in Walk()
                from property in Lists(value.GetType())
                let list = property.GetValue(value)
                where list is Array { Length: > 0 } or (IList { IsReadOnly: false } and not Array) or IDictionary { IsReadOnly: false }
                select $"{value.GetType().Name}.{property.Name} is a {list.GetType().Name}").Distinct(),
        ];
        Assert.True(open.Length == 0, string.Join(Environment.NewLine, open));
    }

    /// <summary>A record is as equal as its lists: none may be compared by reference.</summary>
    [Fact]
    public void Lists_of_records_are_equal_by_their_members()
    {
        string[] open =
        [
            .. (from value in Walk()
                where value.GetType().GetMethod("PrintMembers", BindingFlags.Instance | BindingFlags.NonPublic) is not null
                    && value.GetType().GetMethod(nameof(Equals), [value.GetType()])!.GetCustomAttribute<CompilerGeneratedAttribute>() is not null
                from field in value.GetType().GetFields(BindingFlags.Instance | BindingFlags.NonPublic | BindingFlags.Public)
                let list = field.GetValue(value)
                where list is IEnumerable and not string && list.GetType().GetMethod(nameof(Equals), [typeof(object)])!.DeclaringType == typeof(object)
                select $"{value.GetType().Name}.{field.Name} is a {list.GetType().Name}").Distinct(),
        ];
        Assert.True(open.Length == 0, string.Join(Environment.NewLine, open));
    }

    /// <summary>So that the checks above see something.</summary>
    [Fact]
    public void The_walk_reaches_most_of_what_is_public()
    {
        Type[] reached = [.. Walk().Select(v => v.GetType()).Distinct()];
        Assert.Contains(typeof(FillLimit), reached);
        Assert.Contains(typeof(PlannedStage), reached);
        Assert.Contains(typeof(CylinderEntry), reached);
        Assert.Contains(typeof(FractionationPoint), reached);
        Assert.Contains(typeof(FittedAppliance), reached);
        Assert.InRange(reached.Length, 100, 400);
    }

    private static IEnumerable<object> MakeRoots()
    {
        RecoveryJob full = FullJob.Create();
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller());
        Fluid blend = Fluid.Get("R-407C");
        yield return full;
        yield return full with { Appliance = full.Appliance with { Fluid = FullJob.Blend() } };
        yield return plan;
        yield return PlanDocument.From(plan, course: true);
        yield return RecoveryRecordTests.Measured();
        yield return CylinderFill.Limit(full.Cylinders[0], blend);
        yield return blend.SaturationAt(Temperature.FromDegreesCelsius(20));
        yield return blend.ClosedVesselAt(Temperature.FromDegreesCelsius(20), Density.FromKilogramsPerCubicMeter(500));
        yield return blend.Model.SaturationAtTemperature(290);
        yield return blend.Model.VesselAtTemperature(290, 500);
        yield return blend.Model.DerivativesAt(320, 10);
        yield return blend.Model.ViscosityAtSaturation(290);
        yield return blend.Model.Range;
        yield return RefrigerantFacts.For(blend);
        yield return EvacuationRequirement.For(blend, Mass.FromKilograms(50));
        foreach (object value in Stages(full).Concat(Watched(full)))
        {
            yield return value;
        }
    }

    private static IEnumerable<object> Stages(RecoveryJob job)
    {
        Appliance appliance = Setups.Appliance("R-407C", 5.25, 12.5, 20.5, 20);
        RecoveryMachine machine = Setups.Machine(0.55);
        HoseSet hoses = Setups.Hoses(1.5, 8.5);
        var pull = new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(70.5), Composition = CompositionMode.Tracked };
        StageResult vapor = VaporRecovery.Simulate(appliance, machine, hoses, Setups.Cylinder(), pull);
        yield return pull;
        yield return vapor;
        yield return new HoldOptions { EndPressure = Pressure.FromKilopascals(80.5), CylinderLimit = Mass.FromKilograms(7.5) };
        yield return new EqualizationOptions { MaximumDuration = Duration.FromSeconds(100.5) };
        yield return new LiquidRecoveryOptions { SuctionShare = Ratio.FromPercent(12.5) };
        yield return new PushPullOptions { CondensingConductance = 20.5, LiquidSurface = Area.FromSquareMeters(0.25) };
        var sweep = new HoseSweepOptions { TargetPressure = Pressure.FromPascals(150.5) };
        yield return sweep;
        yield return HoseSweep.Simulate(hoses, machine, sweep);
        yield return MachineClearing.Estimate(appliance.Fluid, machine, hoses, Temperature.FromDegreesCelsius(24.5), Pressure.FromKilopascals(900), Pressure.FromKilopascals(50));
        var ratings = new MachineRatings { Fluid = Fluid.Get("R-22"), VaporRate = MassFlow.FromKilogramsPerSecond(0.0035), FinalVacuum = Pressure.FromKilopascals(33.5) };
        yield return ratings;
        yield return RatingTest.Fit(ratings);
        var rise = new RiseTestReadings
        {
            Fluid = appliance.Fluid,
            InternalVolume = Volume.FromLiters(24.5),
            FirstPressure = Pressure.FromKilopascals(50.5),
            FirstTemperature = Temperature.FromDegreesCelsius(10.5),
            SecondPressure = Pressure.FromKilopascals(57.5),
            SecondTemperature = Temperature.FromDegreesCelsius(12.5),
        };
        yield return rise;
        yield return RiseTest.Judge(rise);
        yield return new SimulationSetup { Appliance = appliance, Machine = machine, Hoses = hoses, Cylinder = job.Cylinders[0] };
    }

    private static IEnumerable<object> Watched(RecoveryJob job)
    {
        var reading = new RawReading(1.5) { SuctionGaugePressure = 250_000.5, GrossWeight = 17.25, AirTemperature = 295.5 };
        var monitor = RecoveryMonitor.Start(job);
        var estimator = new RecoveryEstimator(job);
        estimator.Add(in reading);
        estimator.Read(out RawEstimate estimate);
        yield return reading;
        yield return estimate;
        yield return estimator;
        yield return monitor;
        yield return monitor.Update(new JobReading { Time = Duration.FromSeconds(1.5), SuctionGaugePressure = Pressure.FromKilopascals(250.5), GrossWeight = Mass.FromKilograms(17.25) });
        yield return new MonitorOptions { Level = Pressure.FromKilopascals(67.5) };
        yield return new CalibrationOptions();
        yield return JobCalibration.Fit(ExampleLog.Told, ExampleLog.Create());
    }

    /// <summary>Every value of the library that is reached from the roots by public properties and lists.</summary>
    private static IEnumerable<object> Walk()
    {
        var seen = new HashSet<object>(ReferenceEqualityComparer.Instance);
        var next = new Stack<object>(Roots);
        while (next.TryPop(out object? value))
        {
            if (value.GetType().Assembly != Library || value is Enum or PropertyModel || !value.GetType().IsVisible || !seen.Add(value) || seen.Count > 20_000)
            {
                continue;
            }

            yield return value;
            foreach (PropertyInfo property in value.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.GetIndexParameters().Length == 0))
            {
                if (Get(property, value) is object found)
                {
                    foreach (object item in found is IEnumerable list and not string ? list.Cast<object>().Take(20) : [found])
                    {
                        next.Push(item);
                    }
                }
            }
        }
    }

    private static object? Get(PropertyInfo property, object value)
    {
        try
        {
            return property.GetValue(value);
        }
        catch (TargetInvocationException e) when (e.InnerException is PropertyRangeException or InvalidOperationException)
        {
            return null;
        }
    }

    private static IEnumerable<PropertyInfo> Lists(Type type) => type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
        .Where(p => p.GetIndexParameters().Length == 0 && p.PropertyType != typeof(string) && typeof(IEnumerable).IsAssignableFrom(p.PropertyType));
}
