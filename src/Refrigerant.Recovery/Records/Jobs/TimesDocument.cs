using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>Time that handling takes.</summary>
internal sealed record TimesDocument
{
    /// <summary>To change the hoses over from liquid to vapor recovery; 5 min by default.</summary>
    public double? HoseChangeMinutes { get; init; }

    /// <summary>To close a full cylinder, weigh it and connect the next; 4 min by default.</summary>
    public double? CylinderChangeMinutes { get; init; }

    /// <summary>To close valves, weigh and label the last cylinder and disconnect; 5 min by default.</summary>
    public double? CloseMinutes { get; init; }

    /// <summary>How long the appliance stands after a pull while its pressure is watched; 10 min by default.</summary>
    public double? HoldMinutes { get; init; }

    public static TimesDocument From(JobTimes times) => new()
    {
        HoseChangeMinutes = Plain.Minutes(times.HoseChange),
        CylinderChangeMinutes = Plain.Minutes(times.CylinderChange),
        CloseMinutes = Plain.Minutes(times.Close),
        HoldMinutes = Plain.Minutes(times.Hold),
    };

    public JobTimes ToTimes(DocumentNode node) => node.Build(() =>
    {
        JobTimes times = new();
        return times with
        {
            HoseChange = HoseChangeMinutes is double hose ? Plain.DurationOf(hose) : times.HoseChange,
            CylinderChange = CylinderChangeMinutes is double cylinder ? Plain.DurationOf(cylinder) : times.CylinderChange,
            Close = CloseMinutes is double close ? Plain.DurationOf(close) : times.Close,
            Hold = HoldMinutes is double hold ? Plain.DurationOf(hold) : times.Hold,
        };
    });
}
