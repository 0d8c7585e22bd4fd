using System.Linq;
using Refrigerant.Recovery.Simulation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>Inputs are the same only where every hand, valve and heater is.</summary>
public class InputsEqualityTests
{
    private static readonly SimulationInputs[] Each =
    [
        SimulationInputs.Running,
        new(machineRunning: false),
        new(inletOpening: 0.5),
        new(liquidOpening: 0.5),
        new(heaterPower: 100),
        new(crankcaseHeaterPower: 100),
        new(fanFactor: 3),
        new(waterFactor: 3),
        new(airTemperature: 300),
        new(cylinderSurroundings: 300),
        new(cylinderFactor: 3),
    ];

    [Fact]
    public void Inputs_that_differ_in_one_member_are_not_the_same()
    {
        Assert.Equal(typeof(SimulationInputs).GetProperties().Count(property => property.SetMethod is not null), Each.Length - 1);
        for (int i = 0; i < Each.Length; i++)
        {
            for (int j = 0; j < Each.Length; j++)
            {
                Assert.Equal(i == j, Each[i] == Each[j]);
                Assert.Equal(i != j, Each[i] != Each[j]);
            }
        }
    }
}
