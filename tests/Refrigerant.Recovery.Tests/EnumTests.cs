using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Tests.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests;

/// <summary>A value that an enumeration does not have is refused wherever one is taken.</summary>
public class EnumTests
{
    private const int Undefined = 999;

    private static readonly Assembly Library = typeof(Fluid).Assembly;

    /// <summary>Parameters that are not those of a constructor with a member of the same name; the one of a raw state is vouched for by the engine that makes it.</summary>
    private static readonly Dictionary<string, Action> Calls = MakeCalls();

    [Fact]
    public void Every_member_refuses_it()
    {
        int tried = 0;
        foreach (PropertyInfo property in Library.GetExportedTypes().SelectMany(type => type.GetProperties()).Where(p => p.SetMethod is { IsPublic: true } && EnumOf(p.PropertyType) is not null))
        {
            Type type = property.ReflectedType!;
            if (type.IsAbstract)
            {
                continue;
            }

            object made = System.Runtime.CompilerServices.RuntimeHelpers.GetUninitializedObject(type);
            Exception? thrown = Record.Exception(() => property.SetValue(made, Enum.ToObject(EnumOf(property.PropertyType)!, Undefined)))?.InnerException;
            var refused = thrown as ArgumentOutOfRangeException;
            Assert.True(refused is not null, $"{type.Name}.{property.Name}: {thrown}");
            Assert.Equal(property.Name, refused!.ParamName);
            Assert.Contains($"{property.Name} is {Undefined}; it must be one of ", refused.Message, StringComparison.Ordinal);
            tried++;
        }

        Assert.InRange(tried, 20, 100);
    }

    [Fact]
    public void Every_parameter_refuses_it()
    {
        foreach (MethodBase method in Library.GetExportedTypes().SelectMany(type => type.GetConstructors().Concat<MethodBase>(type.GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly))))
        {
            foreach (ParameterInfo parameter in method.GetParameters().Where(p => EnumOf(p.ParameterType) is not null))
            {
                string name = $"{method.DeclaringType!.Name}.{(method.IsConstructor ? "new" : method.Name)}.{parameter.Name}";
                bool isMember = method.IsConstructor && method.DeclaringType.GetProperties().Any(p => p.SetMethod is { IsPublic: true } && string.Equals(p.Name, parameter.Name == "pressureClass" ? "Class" : parameter.Name, StringComparison.OrdinalIgnoreCase));
                if (isMember || (method.IsSpecialName && !method.IsConstructor) || name == "StatePoint.new.phase" || method.DeclaringType.IsEnum)
                {
                    continue;
                }

                Assert.True(Calls.TryGetValue(name, out Action? call), $"{name}: no call");
                ArgumentOutOfRangeException refused = Assert.Throws<ArgumentOutOfRangeException>(call!);
                Assert.Equal(parameter.Name, refused.ParamName);
                Assert.Contains($"{parameter.Name} is {Undefined}; it must be ", refused.Message, StringComparison.Ordinal);
            }
        }
    }

    private static Type? EnumOf(Type type) => (Nullable.GetUnderlyingType(type) ?? type) is { IsEnum: true } found && found.Assembly == Library ? found : null;

    private static Dictionary<string, Action> MakeCalls()
    {
        const DisplayUnits Units = (DisplayUnits)Undefined;
        const RoundingMode Mode = (RoundingMode)Undefined;
        const DisplayUnits Known = DisplayUnits.International;
        RecoveryJob job = Jobs.Chiller();
        FindingCode code = new("too-weak", FindingSubject.Safety, "a cart");
        Finding finding = new(code, Severity.Note, "test", $"It is {FindingValue.Mass("weight", Mass.FromKilograms(40))}.");
        Pressure pressure = Pressure.FromKilopascals(50);
        return new Dictionary<string, Action>
        {
            ["Finding.new.severity"] = () => _ = new Finding(code, (Severity)Undefined, "test", $"a"),
            ["Finding.ToText.units"] = () => finding.ToText(Units),
            ["FindingCode.new.subject"] = () => _ = new FindingCode("a", (FindingSubject)Undefined, "b"),
            ["FindingValue.ToText.units"] = () => finding.Values[0].ToText(Units),
            ["StageWatch.ToText.units"] = () => RecoveryPlanner.Plan(job).Stages.SelectMany(stage => stage.Hookup.Watches).First(watch => watch.Value is { Kind: not FindingValueKind.Duration }).ToText(Units),
            ["RecoveryPlan.ToText.units"] = () => RecoveryPlanner.Plan(job).ToText(Units),
            ["FillLimit.Rule.kind"] = () => CylinderFill.Limit(job.Cylinders[0], job.Appliance.Fluid).Rule((FillRuleKind)Undefined),
            ["RawEstimate.Has.condition"] = () => default(RawEstimate).Has((JobCondition)Undefined),
            ["PlanStep.new.kind"] = () => _ = new PlanStep((StageKind)Undefined),
            ["PlanChoice.Find.objective"] = () => PlanChoice.Find(job, new Van(), (PlanObjective)Undefined),
            ["OilMatch.Check.oil"] = () => OilMatch.Check(job.Appliance.Fluid, (OilKind)Undefined),
            ["OilMatch.FamilyOf.oil"] = () => OilMatch.FamilyOf((OilKind)Undefined),
            ["RefrigerantFacts.GlobalWarmingPotential.report"] = () => RefrigerantFacts.For(job.Appliance.Fluid).GlobalWarmingPotential((AssessmentReport)Undefined),
            ["RefrigerantFacts.CarbonDioxideEquivalent.report"] = () => RefrigerantFacts.For(job.Appliance.Fluid).CarbonDioxideEquivalent(Mass.FromKilograms(1), (AssessmentReport)Undefined),
            ["FindingValue.AbsolutePressure.rounding"] = () => FindingValue.AbsolutePressure("a", pressure, Mode),
            ["FindingValue.GaugePressure.rounding"] = () => FindingValue.GaugePressure("a", pressure, Mode),
            ["FindingValue.Length.rounding"] = () => FindingValue.Length("a", Length.FromMeters(1), Mode),
            ["FindingValue.Mass.rounding"] = () => FindingValue.Mass("a", Mass.FromKilograms(1), Mode),
            ["FindingValue.PressureDifference.rounding"] = () => FindingValue.PressureDifference("a", pressure, Mode),
            ["FindingValue.Share.rounding"] = () => FindingValue.Share("a", Ratio.FromPercent(1), Mode),
            ["FindingValue.Temperature.rounding"] = () => FindingValue.Temperature("a", Temperature.FromKelvins(300), Mode),
            ["FindingValue.TemperatureDifference.rounding"] = () => FindingValue.TemperatureDifference("a", TemperatureDelta.FromKelvins(3), Mode),
            ["FindingValue.Vacuum.rounding"] = () => FindingValue.Vacuum("a", pressure, Mode),
            ["FindingValue.Volume.rounding"] = () => FindingValue.Volume("a", Volume.FromLiters(1), Mode),
            ["QuantityText.AbsolutePressure.units"] = () => QuantityText.AbsolutePressure(pressure, Units),
            ["QuantityText.AbsolutePressure.rounding"] = () => QuantityText.AbsolutePressure(pressure, Known, Mode),
            ["QuantityText.Density.units"] = () => QuantityText.Density(Density.FromKilogramsPerCubicMeter(1), Units),
            ["QuantityText.GaugePressure.units"] = () => QuantityText.GaugePressure(pressure, pressure, Units),
            ["QuantityText.GaugePressure.rounding"] = () => QuantityText.GaugePressure(pressure, pressure, Known, Mode),
            ["QuantityText.GaugeReading.units"] = () => QuantityText.GaugeReading(pressure, Units),
            ["QuantityText.GaugeReading.rounding"] = () => QuantityText.GaugeReading(pressure, Known, Mode),
            ["QuantityText.HeatFlow.units"] = () => QuantityText.HeatFlow(Power.FromWatts(1), Units),
            ["QuantityText.Length.units"] = () => QuantityText.Length(Length.FromMeters(1), Units),
            ["QuantityText.Length.rounding"] = () => QuantityText.Length(Length.FromMeters(1), Known, Mode),
            ["QuantityText.Mass.units"] = () => QuantityText.Mass(Mass.FromKilograms(1), Units),
            ["QuantityText.Mass.rounding"] = () => QuantityText.Mass(Mass.FromKilograms(1), Known, Mode),
            ["QuantityText.MassFlow.units"] = () => QuantityText.MassFlow(MassFlow.FromKilogramsPerSecond(1), Units),
            ["QuantityText.PressureDifference.units"] = () => QuantityText.PressureDifference(pressure, Units),
            ["QuantityText.PressureDifference.rounding"] = () => QuantityText.PressureDifference(pressure, Known, Mode),
            ["QuantityText.PressurePerTemperature.units"] = () => QuantityText.PressurePerTemperature(pressure, Units),
            ["QuantityText.Share.rounding"] = () => QuantityText.Share(Ratio.FromPercent(1), Mode),
            ["QuantityText.Temperature.units"] = () => QuantityText.Temperature(Temperature.FromKelvins(300), Units),
            ["QuantityText.Temperature.rounding"] = () => QuantityText.Temperature(Temperature.FromKelvins(300), Known, Mode),
            ["QuantityText.TemperatureDifference.units"] = () => QuantityText.TemperatureDifference(TemperatureDelta.FromKelvins(3), Units),
            ["QuantityText.TemperatureDifference.rounding"] = () => QuantityText.TemperatureDifference(TemperatureDelta.FromKelvins(3), Known, Mode),
            ["QuantityText.Vacuum.units"] = () => QuantityText.Vacuum(pressure, Units),
            ["QuantityText.Vacuum.rounding"] = () => QuantityText.Vacuum(pressure, Known, Mode),
            ["QuantityText.Volume.units"] = () => QuantityText.Volume(Volume.FromLiters(1), Units),
            ["QuantityText.Volume.rounding"] = () => QuantityText.Volume(Volume.FromLiters(1), Known, Mode),
            ["QuantityText.VolumeFlow.units"] = () => QuantityText.VolumeFlow(VolumeFlow.FromLitersPerSecond(1), Units),
        };
    }
}
