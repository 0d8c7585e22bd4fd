using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using System.Text.Json.Nodes;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Tests.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Records;

public class RecoveryJobJsonTests
{
    /// <summary>Twelve significant digits are written; two roundings and two conversions of units stay within this.</summary>
    private const double Digits = 5e-12;

    private const string Minimal = """
        {
          "appliance": { "refrigerant": "R-410A", "chargeKilograms": 4, "internalVolumeLiters": 12, "temperatureCelsius": 30 },
          "machine": { "displacementLitersPerSecond": 0.5 },
          "hoses": { "vaporSide": [ { "lengthMeters": 1.5, "innerDiameterMillimeters": 4.7 } ] },
          "cylinders": [ { "mark": "4BA400", "waterCapacityKilograms": 21.6, "tareWeightKilograms": 12.5 } ]
        }
        """;

    [Fact]
    public void Every_input_survives_the_round_trip()
    {
        RecoveryJob job = FullJob.Create();
        string json = RecoveryJobJson.Write(job);
        Same(job, RecoveryJobJson.Read(json), "job");
    }

    /// <summary>So that the round trip above cannot pass by defaults standing in for what was lost.</summary>
    [Fact]
    public void The_full_job_differs_from_the_defaults_in_every_input()
    {
        RecoveryJob full = FullJob.Create();
        RecoveryJob plain = RecoveryJobJson.Read(Minimal);
        string[] same = [.. new (object Full, object Plain)[]
        {
            (full, plain), (full.Appliance, plain.Appliance), (full.Machine, plain.Machine), (full.Machine.Condenser, plain.Machine.Condenser),
            (full.Times, plain.Times), (full.Aids, plain.Aids), (full.MachinePast!, new MachinePast()), (full.Machine.Body!, plain.Machine.Body!), (full.Hoses, plain.Hoses),
            (full.Appliance.Oil!, new ApplianceOil { Mass = Mass.FromKilograms(1), Kind = OilKind.Mineral }), (full.Cylinders[0], plain.Cylinders[0]),
            (full.Hoses.VaporSide[0], plain.Hoses.VaporSide[0]), (full.Evacuation! with { Appliance = ApplianceKind.Small }, new EvacuationOptions()),
        }.SelectMany(pair => Inputs(pair.Full.GetType())
            .Where(p => Equals(p.GetValue(pair.Full), p.GetValue(pair.Plain)))
            .Select(p => $"{pair.Full.GetType().Name}.{p.Name}"))];

        // The barometer of the evacuation options is replaced by the job's; the other two follow from the mark.
        Assert.Equal(["RecoveryCylinder.ServicePressure", "RecoveryCylinder.Specification", "EvacuationOptions.Barometer"], same);
    }

    [Fact]
    public void What_is_written_is_written_the_same_again()
    {
        RecoveryJob freezing = RecoveryJobJson.Read(Minimal.Replace("temperatureCelsius\": 30", "temperatureCelsius\": -1e-13", StringComparison.Ordinal));
        foreach (RecoveryJob job in new[] { FullJob.Create(), Jobs.Chiller(), RecoveryJobJson.Read(Minimal), freezing })
        {
            string once = RecoveryJobJson.Write(job);
            Assert.Equal(once, RecoveryJobJson.Write(RecoveryJobJson.Read(once)));
        }
    }

    [Fact]
    public void What_is_left_out_takes_its_default()
    {
        RecoveryJob read = RecoveryJobJson.Read(Minimal);
        RecoveryJob made = new()
        {
            Appliance = new Appliance
            {
                Fluid = Fluid.Get("R-410A"),
                Charge = Mass.FromKilograms(4),
                InternalVolume = Volume.FromLiters(12),
                Temperature = Temperature.FromDegreesCelsius(30),
            },
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)),
            Hoses = new HoseSet { VaporSide = [new Hose { Length = Length.FromMeters(1.5), InnerDiameter = Length.FromMillimeters(4.7) }] },
            Cylinders = [RecoveryCylinder.FromMark("4BA400", Mass.FromKilograms(21.6), Mass.FromKilograms(12.5))],
        };
        Same(made, read, "job");
        Assert.Same(Barometer.Standard, read.Barometer);
    }

    [Fact]
    public void A_blend_by_composition_is_read_back_with_its_composition()
    {
        RecoveryJob job = FullJob.Create();
        job = job with { Appliance = job.Appliance with { Fluid = FullJob.Blend() } };
        Fluid read = RecoveryJobJson.Read(RecoveryJobJson.Write(job)).Appliance.Fluid;
        Assert.Equal("blend of the house", read.Designation);
        Assert.Equal(["R-32", "R-134a"], read.Composition.Select(c => c.Designation));
        Assert.Equal(0.3, read.Composition[0].MassFraction, 1e-12);
    }

    [Fact]
    public void Water_that_moves_and_a_barometer_that_was_read_survive()
    {
        RecoveryJob job = Jobs.Chiller() with { Barometer = Barometer.Reading(Pressure.FromKilopascals(97.3)) };
        job = job with
        {
            Appliance = job.Appliance with
            {
                Water = TubeWater.Moving(MassFlow.FromKilogramsPerSecond(2.1), Temperature.FromDegreesCelsius(9), ThermalResistance.FromSquareMeterKelvinsPerWatt(0.0009)),
            },
        };
        Same(job, RecoveryJobJson.Read(RecoveryJobJson.Write(job)), "job");
    }

    [Fact]
    public void A_machine_without_a_body_and_one_that_pumped_a_blend_survive()
    {
        RecoveryJob job = Jobs.Chiller() with
        {
            Machine = RecoveryMachine.Ideal(VolumeFlow.FromLitersPerSecond(0.5)),
            MachinePast = new MachinePast { Refrigerant = FullJob.Blend() },
        };
        RecoveryJob read = RecoveryJobJson.Read(RecoveryJobJson.Write(job));
        Same(job with { MachinePast = null }, read with { MachinePast = null }, "job");
        Assert.Null(read.Machine.Body);
        Assert.Equal(["R-32", "R-134a"], read.MachinePast!.Refrigerant!.Composition.Select(c => c.Designation));
    }

    [Fact]
    public void A_fitting_keeps_its_resistance_however_narrow_or_wide()
    {
        Fitting[] fittings =
        [
            Fitting.FromFlowCoefficient("needle valve", 1e-3), Fitting.FromFlowCoefficient("gate", 1e4),
            Fitting.FromLossCoefficient("orifice", 1e6, Length.FromMillimeters(0.1)), Fitting.FromLossCoefficient("nothing", 0, Length.FromMeters(1)),
        ];
        RecoveryJob job = RecoveryJobJson.Read(Minimal);
        Hose hose = job.Hoses.VaporSide[0] with { Fittings = fittings };
        job = job with { Hoses = job.Hoses with { VaporSide = [hose, hose with { InnerDiameter = Length.FromMeters(1) }] } };
        Same(job, RecoveryJobJson.Read(RecoveryJobJson.Write(job)), "job");
    }

    [Theory]
    [InlineData("chargeKilograms\": 4", "chargeKilograms\": -4", "$.appliance.chargeKilograms", "is -4: it must be from 1E-06 to 1000000.")]
    [InlineData("chargeKilograms\": 4", "chargeKilograms\": 1e999", "$.appliance.chargeKilograms", "must be a number")]
    [InlineData("chargeKilograms\": 4", "chargeKilograms\": \"NaN\"", "$.appliance.chargeKilograms", "is \"NaN\": it must be a number")]
    [InlineData("chargeKilograms\": 4", "chargeKilograms\": null", "$.appliance.chargeKilograms", "must be given")]
    [InlineData("\"chargeKilograms\": 4,", "", "$.appliance.chargeKilograms", "is missing")]
    [InlineData("chargeKilograms\": 4", "chargeKilograms\": 4, \"chargeKilograms\": 5", "$.appliance.chargeKilograms", "given twice")]
    [InlineData("chargeKilograms\": 4", "chargeKilograms\": 4, \"chargePounds\": 5", "$.appliance.chargePounds", "no such member")]
    [InlineData("chargeKilograms\": 4", "chargekilograms\": 4", "$.appliance.chargekilograms", "no such member")]
    [InlineData("\"R-410A\"", "\"R-410X\"", "$.appliance.refrigerant", "Did you mean")]
    [InlineData("\"R-410A\"", "410", "$.appliance.refrigerant", "is 410: it must be a text")]
    [InlineData("\"R-410A\"", "\"\\ud800\"", "$.appliance.refrigerant", "not valid Unicode")]
    [InlineData("internalVolumeLiters\": 12", "internalVolumeLiters\": 1e308", "$.appliance.internalVolumeLiters", "it must be from 0.001 to 10000000")]
    [InlineData("temperatureCelsius\": 30", "temperatureCelsius\": -300", "$.appliance.temperatureCelsius", "it must be from -223.15 to 426.85")]
    [InlineData("displacementLitersPerSecond\": 0.5", "displacementLitersPerSecond\": 0", "$.machine.displacementLitersPerSecond", "from 0.0001 to 10000")]
    [InlineData("0.5 }", "0.5, \"condenser\": { \"ratedDutyWatts\": 1e300 } }", "$.machine.condenser.ratedDutyWatts", "from 0 to 100000000")]
    [InlineData("innerDiameterMillimeters\": 4.7", "innerDiameterMillimeters\": 4700", "$.hoses.vaporSide[0].innerDiameterMillimeters", "from 0.5 to 1000")]
    [InlineData("4.7 }", "4.7, \"fittings\": [ { \"name\": \"valve\" } ] }", "$.hoses.vaporSide[0].fittings[0]", "give one of")]
    [InlineData("\"vaporSide\": [", "\"discharge\": [", "$.hoses.vaporSide", "is missing")]
    [InlineData("\"4BA400\"", "\"9ZZ\"", "$.cylinders[0].mark", "no cylinder mark")]
    [InlineData("\"mark\": \"4BA400\",", "", "$.cylinders[0]", "give one of mark")]
    [InlineData("12.5 }", "12.5, \"requalificationDue\": \"2028-02-30\" }", "$.cylinders[0].requalificationDue", "date such as")]
    [InlineData("12.5 } ]", "12.5 } ], \"pushPull\": \"sometimes\"", "$.pushPull", "WhereItPays, Never, Always")]
    [InlineData("12.5 } ]", "12.5 } ], \"pushPull\": 7", "$.pushPull", "must be a text")]
    [InlineData("12.5 } ]", "12.5 } ], \"maximumPulls\": 2.5", "$.maximumPulls", "whole number")]
    [InlineData("12.5 } ]", "12.5 } ], \"maximumPulls\": 51", "$.maximumPulls", "from 1 to 50")]
    [InlineData("12.5 } ]", "12.5 } ], \"clearMachine\": \"yes\"", "$.clearMachine", "true or false")]
    [InlineData("12.5 } ]", "12.5 } ], \"barometer\": { \"elevationMeters\": -431 }", "$.barometer.elevationMeters", "from -430 to 11000")]
    [InlineData("12.5 } ]", "12.5 } ], \"barometer\": {}", "$.barometer", "give one of")]
    [InlineData("12.5 } ]", "12.5 } ], \"evacuation\": { \"ownLevelKilopascalsAbsolute\": 0, \"sourceOfOwnLevel\": \"x\" }", "$.evacuation.ownLevelKilopascalsAbsolute", "greater than 0")]
    [InlineData("12.5 } ]", "12.5 } ], \"format\": \"something-else/9\"", "$.format", "refrigerant-recovery-job/1")]
    [InlineData("12.5 } ]", "12.5 }, null ]", "$.cylinders[1]", "must be an object")]
    [InlineData("\"refrigerant\": \"R-410A\"", "\"blend\": { \"components\": [ { \"refrigerant\": \"R-32\", \"massFraction\": 0.6 } ] }", "$.appliance.blend", "1")]
    public void An_error_names_its_place_the_value_and_what_is_valid(string good, string bad, string path, string message)
    {
        DocumentException error = Assert.Throws<DocumentException>(() => RecoveryJobJson.Read(Minimal.Replace(good, bad, StringComparison.Ordinal)));
        Assert.Equal(path, error.Path);
        Assert.StartsWith(path, error.Message, StringComparison.Ordinal);
        Assert.Contains(message, error.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("Parameter", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("7")]
    [InlineData("{")]
    [InlineData("{}")]
    [InlineData("{\"appliance\": {},}")]
    [InlineData("// no\n{}")]
    [InlineData("{\"a\": 01}")]
    [InlineData("{\"\\ud800\": 1}")]
    [InlineData("{\"a\": 1, \"\\ud800\": 1}")]
    [InlineData("\ud800")]
    [InlineData("{\"appliance\": NaN}")]
    public void What_is_no_job_is_told_so(string text) => Assert.Throws<DocumentException>(() => RecoveryJobJson.Read(text));

    [Fact]
    public void Deep_nesting_is_told_so()
    {
        string deep = string.Concat(Enumerable.Repeat("{\"appliance\":", 100_000)) + "1" + new string('}', 100_000);
        Assert.Contains("32 levels", Assert.Throws<DocumentException>(() => RecoveryJobJson.Read(deep)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Broken_JSON_names_the_line() =>
        Assert.Contains("line 9", Assert.Throws<DocumentException>(() => RecoveryJobJson.Read(string.Join('\n', Enumerable.Repeat("", 8)) + "\n{ a")).Message, StringComparison.Ordinal);

    [Fact]
    public void Null_is_an_argument_error()
    {
        Assert.Throws<ArgumentNullException>(() => RecoveryJobJson.Read(null!));
        Assert.Throws<ArgumentNullException>(() => RecoveryJobJson.Write(null!));
    }

    /// <summary>Each member in turn is replaced by each of these, at every depth.</summary>
    [Fact]
    public void No_replacement_of_a_member_gives_any_other_exception()
    {
        string[] replacements = ["null", "true", "-1", "0", "1e-320", "1e308", "-1e308", "\"\"", "\"NaN\"", "\"\\u0000\"", "[]", "{}", "[[[]]]", "[null]"];
        string full = RecoveryJobJson.Write(FullJob.Create());
        int tried = 0;
        foreach (string path in Paths(JsonNode.Parse(full)!).ToArray())
        {
            foreach (string replacement in replacements)
            {
                JsonNode root = JsonNode.Parse(full)!;
                JsonNode target = Paths(root, path)!;
                target.ReplaceWith(JsonNode.Parse(replacement));
                tried++;
                try
                {
                    Assert.NotNull(RecoveryJobJson.Read(root.ToJsonString()));
                }
                catch (DocumentException e)
                {
                    Assert.StartsWith("$", e.Path, StringComparison.Ordinal);
                }
            }
        }

        Assert.True(tried > 1000);
    }

    private static IEnumerable<string> Paths(JsonNode node) => node switch
    {
        JsonObject o => o.SelectMany(p => p.Value is null ? [] : Paths(p.Value).Prepend(p.Value.GetPath())),
        JsonArray a => a.SelectMany(i => i is null ? [] : Paths(i).Prepend(i.GetPath())),
        _ => [],
    };

    private static JsonNode? Paths(JsonNode node, string path) =>
        node.GetPath() == path ? node
        : node switch
        {
            JsonObject o => o.Select(p => p.Value is null ? null : Paths(p.Value, path)).FirstOrDefault(found => found is not null),
            JsonArray a => a.Select(i => i is null ? null : Paths(i, path)).FirstOrDefault(found => found is not null),
            _ => null,
        };

    private static IEnumerable<PropertyInfo> Inputs(Type type) =>
        type.GetProperties().Where(p => p.CanWrite && p.GetIndexParameters().Length == 0);

    /// <summary>Compares two inputs member by member, quantities by their value in base units.</summary>
    private static void Same(object? expected, object? actual, string path)
    {
        Assert.Equal(expected is null, actual is null);
        switch (expected)
        {
            case null:
                break;
            case IQuantity quantity:
                Close((double)quantity.As(quantity.QuantityInfo.BaseUnitInfo.Value), (double)((IQuantity)actual!).As(quantity.QuantityInfo.BaseUnitInfo.Value), path);
                break;
            case double number:
                Close(number, (double)actual!, path);
                break;
            case Fitting fitting:
                Close(fitting.Resistance, ((Fitting)actual!).Resistance, path);
                Assert.Equal((fitting.Name, fitting.IsCore), (((Fitting)actual).Name, ((Fitting)actual).IsCore));
                break;
            case Barometer barometer:
                Assert.Equal(barometer.ToString(), actual!.ToString());
                break;
            case Fluid or RuleSet or string or Enum or bool or int or DateTime:
                Assert.True(expected.Equals(actual), path);
                break;
            case System.Collections.IEnumerable list:
                object[] left = [.. list.Cast<object>()];
                object[] right = [.. ((System.Collections.IEnumerable)actual!).Cast<object>()];
                Assert.Equal(left.Length, right.Length);
                for (int i = 0; i < left.Length; i++)
                {
                    Same(left[i], right[i], $"{path}[{i}]");
                }

                break;
            default:
                foreach (PropertyInfo property in expected.GetType().GetProperties().Where(p => p.GetIndexParameters().Length == 0))
                {
                    Same(property.GetValue(expected), property.GetValue(actual), path + "." + property.Name);
                }

                break;
        }
    }

    private static void Close(double expected, double actual, string path) =>
        Assert.True(Math.Abs(actual - expected) <= Digits * Math.Abs(expected), $"{path}: {expected:R} became {actual:R}");

    /// <summary>A blend that is only called like one of the catalogue comes back as what it is.</summary>
    [Theory]
    [InlineData("R-410A")]
    [InlineData("R-22")]
    public void A_blend_of_the_callers_that_is_called_like_another_keeps_its_composition(string name)
    {
        Fluid blend = Fluid.Blend(new Dictionary<string, double> { ["R-32"] = 0.9, ["R-125"] = 0.1 }, name);
        RecoveryJob full = FullJob.Create();
        RecoveryJob read = RecoveryJobJson.Read(RecoveryJobJson.Write(full with { Appliance = full.Appliance with { Fluid = blend } }));
        Assert.Equal([0.9, 0.1], read.Appliance.Fluid.Composition.Select(component => component.MassFraction));
    }

    /// <summary>Parts of what is given twice are not looked at, whatever is in them.</summary>
    [Fact]
    public void What_is_given_twice_is_told_once()
    {
        const string Text = """{ "hoses": { "vaporSide": [] }, "hoses": { "vaporSide": [ { "lengthMeters": [ 1 ] } ] } }""";
        Assert.False(RecoveryJobJson.TryRead(Text, out _, out IReadOnlyList<DocumentError> errors));
        Assert.Single(errors, error => error.Path == "$.hoses" && error.Message.Contains("twice", StringComparison.Ordinal));
        Assert.DoesNotContain(errors, error => error.Path.StartsWith("$.hoses.", StringComparison.Ordinal));
    }
}
