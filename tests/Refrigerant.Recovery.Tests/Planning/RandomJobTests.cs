using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Soak;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>Random jobs, partly filled cylinders, no heat to much heat, no hold to long holds, all altitudes: what must hold for every plan holds.</summary>
public class RandomJobTests
{
    /// <summary>Pure refrigerants of all pressure classes: a plan of them takes milliseconds. The soak run takes all fluids.</summary>
    public static TheoryData<string> Fluids => ["R-134a", "R-22", "R-32", "R-290", "R-123", "R-1234yf", "R-744", "R-717"];

    [Theory]
    [MemberData(nameof(Fluids))]
    public void No_random_plan_breaks_what_must_hold(string designation)
    {
        Fluid fluid = Fluid.Get(designation);
        var broken = new List<string>();
        int planned = 0;
        for (int seed = 0; seed < 60; seed++)
        {
            RecoveryPlan plan;
            try
            {
                plan = RecoveryPlanner.Plan(RandomJobs.Next(new Random(seed), fluid));
            }
            catch (ImpossibleJobException)
            {
                continue;
            }
            catch (PropertyRangeException)
            {
                continue;
            }

            planned++;
            foreach (string what in PlanInvariants.Broken(plan))
            {
                broken.Add($"{designation}, seed {seed}: {what}");
            }
        }

        Assert.Empty(broken);
        Assert.InRange(planned, 30, 60);
    }
}
