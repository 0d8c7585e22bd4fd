using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>Time that handling takes.</summary>
internal sealed record TimesDocument
{
    /// <summary>To lock out, connect hoses, set up scale and machine and take the first weight; 5 min by default.</summary>
    public double? SetUpMinutes { get; init; }

    /// <summary>To change the hoses over from liquid to vapor recovery; 5 min by default.</summary>
    public double? HoseChangeMinutes { get; init; }

    /// <summary>To close a full cylinder, weigh it and connect the next; 4 min by default.</summary>
    public double? CylinderChangeMinutes { get; init; }

    /// <summary>To close valves, weigh and label the last cylinder and disconnect; 5 min by default.</summary>
    public double? CloseMinutes { get; init; }

    /// <summary>How long the appliance stands after a pull while its pressure is watched; 10 min by default.</summary>
    public double? HoldMinutes { get; init; }

    /// <summary>To drain or fill one oil of the machine, besides the time that the oil runs; 3 min by default.</summary>
    public double? OilServiceMinutes { get; init; }

    /// <summary>How long a machine that moves next to nothing is left running before a person gives up; 2 h by default.</summary>
    public double? PatienceMinutes { get; init; }

    public static TimesDocument From(JobTimes times) => new()
    {
        SetUpMinutes = Exact.Minutes(times.SetUp),
        HoseChangeMinutes = Exact.Minutes(times.HoseChange),
        CylinderChangeMinutes = Exact.Minutes(times.CylinderChange),
        CloseMinutes = Exact.Minutes(times.Close),
        HoldMinutes = Exact.Minutes(times.Hold),
        OilServiceMinutes = Exact.Minutes(times.OilService),
        PatienceMinutes = Exact.Minutes(times.Patience),
    };

    public JobTimes ToTimes(DocumentNode node) => node.Build(() =>
    {
        JobTimes times = new();
        return times with
        {
            SetUp = SetUpMinutes is double setUp ? Exact.MinutesOf(setUp) : times.SetUp,
            HoseChange = HoseChangeMinutes is double hose ? Exact.MinutesOf(hose) : times.HoseChange,
            CylinderChange = CylinderChangeMinutes is double cylinder ? Exact.MinutesOf(cylinder) : times.CylinderChange,
            Close = CloseMinutes is double close ? Exact.MinutesOf(close) : times.Close,
            Hold = HoldMinutes is double hold ? Exact.MinutesOf(hold) : times.Hold,
            OilService = OilServiceMinutes is double oil ? Exact.MinutesOf(oil) : times.OilService,
            Patience = PatienceMinutes is double patience ? Exact.MinutesOf(patience) : times.Patience,
        };
    });
}
