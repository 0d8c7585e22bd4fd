using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>Jobs whose parts contradict each other: one exception type, one sentence with the parameter, the value and what is valid.</summary>
public class ContradictionTests
{
    private static readonly Appliance Split = Jobs.Chiller().Appliance with
    {
        Charge = Mass.FromKilograms(20),
        InternalVolume = Volume.FromLiters(60),
        Sections =
        [
            new ApplianceSection { Name = "evaporator", InternalVolume = Volume.FromLiters(40), Charge = Mass.FromKilograms(5) },
            new ApplianceSection { Name = "receiver", InternalVolume = Volume.FromLiters(20), Charge = Mass.FromKilograms(15) },
        ],
    };

    public static TheoryData<string, string[]> Cases => new()
    {
        { "vapor port", ["VaporPort names \"pump\"", "evaporator, receiver"] },
        { "liquid port", ["LiquidPort names \"pump\"", "evaporator, receiver"] },
        { "port without sections", ["LiquidPort names \"receiver\"", "it has none"] },
        { "joined to itself", ["\"receiver\" to itself"] },
        { "joined to nothing", ["Connections names \"pump\""] },
        { "joined without sections", ["Connections has 1 members", "no sections"] },
        { "volumes", ["InternalVolume is 0.07 m³", "0.06 m³"] },
        { "heel", ["LiquidHeel is 21 kg", "the charge, 20 kg"] },
        { "hot", ["Surroundings is not given", "420 K", "from 150 to 400 K"] },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void It_is_told_in_one_clear_sentence(string what, string[] parts)
    {
        RecoveryJob job = Jobs.Chiller() with { Appliance = Bad(what) };
        ImpossibleJobException error = Assert.Throws<ImpossibleJobException>(() => RecoveryPlanner.Plan(job));
        Assert.All(parts, part => Assert.Contains(part, error.Message, StringComparison.Ordinal));
        Assert.True(error.Message.Split("(Parameter").Length <= 2, error.Message);
    }

    [Fact]
    public void Among_setups_it_is_told_which_of_them()
    {
        RecoveryJob job = Jobs.Chiller();
        Setup[] setups = [new Setup("as it is", job), new Setup("two receivers", job with { Appliance = Bad("joined to itself") })];
        ImpossibleJobException error = Assert.Throws<ImpossibleJobException>(() => SetupComparison.Run(job, setups));
        Assert.StartsWith("setup \"two receivers\": ", error.Message, StringComparison.Ordinal);
        Assert.True(error.Message.Split("(Parameter").Length <= 2, error.Message);
    }

    /// <summary>A stage by itself, from no state, is told the same.</summary>
    [Theory]
    [InlineData("liquid port")]
    [InlineData("joined to itself")]
    [InlineData("heel")]
    public void A_stage_by_itself_refuses_it_too(string what)
    {
        RecoveryJob job = Jobs.Chiller();
        Assert.Throws<ArgumentException>(() => PushPull.Simulate(Bad(what), job.Machine, job.Hoses, job.Cylinders[0], new PushPullOptions()));
        Assert.Throws<ArgumentException>(() => ApplianceState.Initial(Bad(what)));
    }

    [Fact]
    public void A_port_and_a_connection_of_its_own_sections_are_taken() =>
        Assert.NotNull(ApplianceState.Initial(Split with { VaporPort = "evaporator", LiquidPort = "receiver", Connections = [Join("receiver", "evaporator")] }));

    private static SectionConnection Join(string from, string to) => new() { From = from, To = to, FlowCoefficient = 0.1 };

    private static Appliance Bad(string what) => what switch
    {
        "vapor port" => Split with { VaporPort = "pump" },
        "liquid port" => Split with { LiquidPort = "pump" },
        "port without sections" => Split with { Sections = [], LiquidPort = "receiver" },
        "joined to itself" => Split with { Connections = [Join("receiver", "receiver")] },
        "joined to nothing" => Split with { Connections = [Join("receiver", "pump")] },
        "joined without sections" => Split with { Sections = [], Connections = [Join("receiver", "receiver")] },
        "volumes" => Split with { InternalVolume = Volume.FromLiters(70) },
        "heel" => Split with { LiquidHeel = Mass.FromKilograms(21) },
        _ => Split with { Sections = [], Charge = Mass.FromKilograms(0.5), LiquidHeel = Mass.Zero, Temperature = Temperature.FromKelvins(420), Surroundings = null },
    };
}
