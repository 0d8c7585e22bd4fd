using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Processes;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>What a vapor recovery says, a little to either side of where it begins to say it.</summary>
public class VaporRecoveryFindingTests
{
    /// <summary>121 °C (250 °F) shortens the life of oil and valves, 149 °C (300 °F) breaks oil down: common practice, no source.</summary>
    [Fact]
    public void Hot_discharge_is_noted_above_250_and_a_caution_above_300_degrees_Fahrenheit()
    {
        var seen = new List<double>();
        for (double efficiency = 0.3; efficiency < 0.95; efficiency *= 1.02)
        {
            StageResult result = Pull(Gas, Setups.Machine(0.5) with { IsentropicEfficiency = efficiency, Body = null }, Setups.Hoses());
            double celsius = result.HottestDischarge!.Value.DegreesCelsius;
            Assert.Equal(celsius > 149 ? Severity.Caution : celsius > 121 ? Severity.Note : null, Word(result, "machine-hot"));
            seen.Add(celsius);
        }

        Assert.Contains(seen, celsius => celsius is > 115 and < 121);
        Assert.Contains(seen, celsius => celsius is > 121 and < 127);
        Assert.Contains(seen, celsius => celsius is > 143 and < 149);
        Assert.Contains(seen, celsius => celsius is > 149 and < 155);
    }

    /// <summary>Hoses that let through less than four fifths of what the machine could draw: our choice.</summary>
    [Fact]
    public void Hoses_are_called_slow_below_four_fifths_of_the_machines_pace()
    {
        var seen = new List<double>();
        for (double bore = 4; bore < 12; bore *= 1.03)
        {
            StageResult result = Pull(Gas, Setups.Machine(0.5), Setups.Hoses(3, bore));
            double share = result.SuctionLineShare.DecimalFractions;
            Assert.Equal(share < 0.8 ? Severity.Note : null, Word(result, "hoses-slow"));
            seen.Add(share);
        }

        Assert.Contains(seen, share => share is > 0.74 and < 0.8);
        Assert.Contains(seen, share => share is > 0.8 and < 0.86);
    }

    /// <summary>A part that stands a twentieth above the gauge is hidden from it: our choice.</summary>
    [Fact]
    public void A_part_is_hidden_that_stands_a_twentieth_above_the_gauge()
    {
        var seen = new List<double>();
        for (double coefficient = 0.15; coefficient < 1.5; coefficient *= 1.03)
        {
            Appliance split = Gas with
            {
                Sections =
                [
                    new ApplianceSection { Name = "near", InternalVolume = Volume.FromLiters(18), Charge = Mass.FromKilograms(0.3) },
                    new ApplianceSection { Name = "far", InternalVolume = Volume.FromLiters(12), Charge = Mass.FromKilograms(0.2) },
                ],
                Connections = [new SectionConnection { From = "near", To = "far", FlowCoefficient = coefficient }],
                VaporPort = "near",
            };
            StageResult result = Pull(split, Setups.Machine(0.5), Setups.Hoses());
            double above = (result.Appliance.Sections.Max(section => section.Pressure.Pascals) / result.Appliance.Pressure.Pascals) - 1;
            Assert.Equal(above > 0.05 ? Severity.Warning : null, Word(result, "hidden-section"));
            seen.Add(above);
        }

        Assert.Contains(seen, above => above is > 0.044 and < 0.05);
        Assert.Contains(seen, above => above is > 0.05 and < 0.055);
    }

    private static Appliance Gas => Setups.Appliance("R-22", 0.5, 30, 20, 50);

    private static StageResult Pull(Appliance appliance, RecoveryMachine machine, HoseSet hoses) => VaporRecovery.Simulate(
        appliance, machine, hoses, Setups.Cylinder(30, 2), new VaporRecoveryOptions { MaximumDuration = Duration.FromSeconds(20) });

    private static Severity? Word(StageResult result, string code) => result.Findings.SingleOrDefault(finding => finding.Code == code)?.Severity;
}
