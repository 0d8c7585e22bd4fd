using System;
using System.Collections;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using FsCheck.Xunit;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;
using Refrigerant.Recovery.Rules;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Records;

/// <summary>What is written and read back equals the first, whatever units its numbers were given in.</summary>
public class RoundTripTests
{
    private const BindingFlags Instance = BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic;

    private const string LabelSigns = "aZ9 \t,;#\"\n\r'Ø";

    [Property(MaxTest = 300)]
    public void A_job_comes_back_as_it_was(int seed)
    {
        RecoveryJob job = Make(new Random(seed));
        RecoveryJob read = RecoveryJobJson.Read(RecoveryJobJson.Write(job));
        Assert.True(job == read, Difference(job, read, "job"));
        Assert.Equal(job.GetHashCode(), read.GetHashCode());
    }

    [Property(MaxTest = 200)]
    public void A_log_comes_back_as_it_was(int seed)
    {
        var random = new Random(seed);
        double time = 0;
        JobLog log = JobLog.FromReadings(
        [
            .. Enumerable.Range(0, 1 + random.Next(20)).Select(_ => new JobReading
            {
                Time = Changed(Duration.FromSeconds(time += 1 + random.NextDouble()), random, change: false),
                SuctionGaugePressure = random.Next(3) == 0 ? null : Changed(Pressure.FromKilopascals(250), random),
                GrossWeight = random.Next(3) == 0 ? null : Changed(Mass.FromKilograms(17.5), random),
                Ambient = random.Next(3) == 0 ? null : Changed(Temperature.FromDegreesCelsius(21.7), random),
                PipeTemperature = random.Next(3) == 0 ? null : Changed(Temperature.FromDegreesCelsius(3.9), random),
                DischargeGaugePressure = random.Next(3) == 0 ? null : Changed(Pressure.FromKilopascals(900), random),
                MachineRunning = random.Next(2) == 0,
                ValveOpen = random.Next(2) == 0,
                Cylinder = random.Next(2) == 0 ? null : Label(random),
            }),
        ]);
        Assert.True(log == JobLogJson.Read(JobLogJson.Write(log)), JobLogJson.Write(log));
        Assert.True(log == JobLogCsv.Read(JobLogCsv.Write(log)), JobLogCsv.Write(log));
    }

    [Fact]
    public void A_number_is_written_as_it_was_given()
    {
        string text = RecoveryJobJson.Write(FullJob.Create());
        Assert.Contains("\"diffusionTimeMinutes\": 4100\n", text, StringComparison.Ordinal);
        Assert.Contains("\"innerDiameterMillimeters\": 7.1,", text, StringComparison.Ordinal);
        Assert.Contains("\"temperatureCelsius\": 18.7,", text, StringComparison.Ordinal);
    }

    /// <summary>The full job, each number of it changed and in a unit of any kind.</summary>
    private static RecoveryJob Make(Random random)
    {
        RecoveryJob full = FullJob.Create();
        FillRules fill = random.Next(2) == 0
            ? FillRules.FromCaller(Label(random), Ratio.FromPercent(100 * random.NextDouble()), Changed(Temperature.FromDegreesCelsius(50), random), "contract")
            : FillRules.Japan;
        RuleSet rules = random.Next(2) == 0 ? RuleSet.FromCaller(Label(random), Changed(Pressure.FromKilopascals(40), random), fill, "contract") : RuleSet.Spain;
        double share = 0.2 + (0.6 * random.NextDouble());
        var shares = new Dictionary<string, double> { ["R-32"] = share, ["R-134a"] = 0.9 - share, ["R-125"] = 0.1 };
        RecoveryJob job = full with
        {
            Appliance = full.Appliance with
            {
                Fluid = random.Next(3) switch { 0 => full.Appliance.Fluid, 1 => Fluid.Blend(shares, "house"), _ => Fluid.BlendByMole(shares) },
                Water = random.Next(2) == 0
                    ? TubeWater.Standing(Changed(Mass.FromKilograms(33), random), Changed(Temperature.FromDegreesCelsius(17), random), Changed(ThermalResistance.FromSquareMeterKelvinsPerWatt(0.001), random))
                    : TubeWater.Moving(Changed(MassFlow.FromKilogramsPerSecond(0.7), random), Changed(Temperature.FromDegreesCelsius(17), random), Changed(ThermalResistance.FromSquareMeterKelvinsPerWatt(0.001), random)),
            },
            Hoses = full.Hoses with
            {
                LiquidSide =
                [
                    full.Hoses.LiquidSide[0] with
                    {
                        Fittings =
                        [
                            Fitting.FromLossCoefficient("bend", random.NextDouble(), Changed(Length.FromMillimeters(9), random)),
                            Fitting.FromFlowCoefficient("valve", 0.5 + random.NextDouble()),
                            Fitting.BallValve(Changed(Length.FromMillimeters(9), random)),
                        ],
                    },
                ],
            },
            Cylinders =
            [
                .. full.Cylinders,
                RecoveryCylinder.FromTestPressure(Changed(Pressure.FromBars(42), random), Changed(Mass.FromKilograms(26), random), Changed(Mass.FromKilograms(14), random), Label(random)),
            ],
            Barometer = Air(random),
            Evacuation = full.Evacuation! with { Rules = rules, Barometer = Air(random) },
        };
        return (RecoveryJob)Shaken(job, random);
    }

    private static Barometer Air(Random random) => random.Next(3) switch
    {
        0 => Barometer.Standard,
        1 => Barometer.AtElevation(Changed(Length.FromMeters(1600), random)),
        _ => Barometer.Reading(Changed(Pressure.FromKilopascals(95), random)),
    };

    private static string Label(Random random) => new([.. Enumerable.Range(0, 1 + random.Next(8)).Select(_ => LabelSigns[random.Next(LabelSigns.Length)]), 'x', " \nx"[random.Next(3)]]);

    /// <summary>The same record with each member that is a number or a quantity changed, where it may be.</summary>
    private static object Shaken(object record, Random random)
    {
        object copy = record.GetType().GetMethod("<Clone>$", Instance)!.Invoke(record, null)!;
        foreach (PropertyInfo property in record.GetType().GetProperties().Where(p => p.SetMethod is { IsPublic: true }))
        {
            object? value = property.GetValue(copy);
            object? other = value switch
            {
                null => null,
                IQuantity quantity => Changed(quantity, random),
                double number => number * (0.5 + random.NextDouble()),
                DateTime day => day.AddHours(random.Next(2000)),
                IList list and not Array when list.Count > 0 && IsRecord(list[0]!) => Listed(list, property.PropertyType.GenericTypeArguments[0], random),
                _ => IsRecord(value) ? Shaken(value, random) : null,
            };
            try
            {
                if (other is not null)
                {
                    property.SetValue(copy, other);
                }
            }
            catch (TargetInvocationException e) when (e.InnerException is ArgumentException)
            {
                // Outside the range of the member: it stays as it was.
            }
        }

        return copy;
    }

    private static Array Listed(IList list, Type type, Random random)
    {
        var copy = Array.CreateInstance(type, list.Count);
        for (int i = 0; i < list.Count; i++)
        {
            copy.SetValue(Shaken(list[i]!, random), i);
        }

        return copy;
    }

    private static bool IsRecord(object value) => value.GetType().Assembly == typeof(Fluid).Assembly && value.GetType().GetMethod("<Clone>$", Instance) is not null;

    private static T Changed<T>(T quantity, Random random, bool change = true)
        where T : IQuantity => (T)Changed((IQuantity)quantity, random, change);

    private static IQuantity Changed(IQuantity quantity, Random random, bool change = true)
    {
        double factor = !change ? 1 : quantity is Temperature ? 0.99 + (0.02 * random.NextDouble()) : 0.7 + (0.6 * random.NextDouble());
        Enum from = quantity.QuantityInfo.BaseUnitInfo.Value;
        IQuantity changed = Quantity.From((double)quantity.As(from) * factor, from);
        UnitInfo[] units = quantity.QuantityInfo.UnitInfos;
        return changed.ToUnit(units[random.Next(units.Length)].Value);
    }

    private static string Difference(object? first, object? second, string path)
    {
        if (Equals(first, second))
        {
            return string.Empty;
        }

        if (first is null || second is null || !IsRecord(first))
        {
            return first is IList one && second is IList two
                ? string.Join(" ", one.Cast<object>().Zip(two.Cast<object>(), (a, b) => Difference(a, b, path + "[]")))
                : $"{path}: {first} became {second}.";
        }

        string inner = string.Join(" ", first.GetType().GetProperties(Instance).Where(p => p.Name != "EqualityContract" && p.GetIndexParameters().Length == 0)
            .Select(p => Difference(p.GetValue(first), p.GetValue(second), $"{path}.{p.Name}")).Where(text => text.Length > 0));
        return inner.Length > 0 ? inner : $"{path}: {first} became {second}.";
    }
}
