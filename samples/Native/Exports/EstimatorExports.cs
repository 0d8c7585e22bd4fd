using System;
using System.Runtime.InteropServices;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Records;

namespace Refrigerant.Recovery.Samples.Native;

/// <summary>What is left in the appliance, and how long still, from gauge, scale and clock.</summary>
internal static unsafe class EstimatorExports
{
    private static readonly HandleTable<RecoveryEstimator> Estimators = new("estimator");

    [UnmanagedCallersOnly(EntryPoint = "rr_estimator_start")]
    public static Status Start(byte* job, int isOilFree, int* estimator)
    {
        try
        {
            ref int handle = ref Errors.Deref(estimator, nameof(estimator));
            var options = new MonitorOptions { Profile = EstimationProfile.Controller, IsOilFree = isOilFree != 0 };
            handle = Estimators.Add(new RecoveryEstimator(RecoveryJobJson.Read(Text.Read(job, nameof(job))), instruments: null, options));
            return Status.Ok;
        }
        catch (Exception exception)
        {
            return Errors.Report(exception);
        }
    }

    [UnmanagedCallersOnly(EntryPoint = "rr_estimator_add")]
    public static Status Add(int estimator, Reading* reading)
    {
        try
        {
            Estimators.Get(estimator).Add(Errors.Deref(reading, nameof(reading)).ToRaw());
            return Status.Ok;
        }
        catch (Exception exception)
        {
            return Errors.Report(exception);
        }
    }

    [UnmanagedCallersOnly(EntryPoint = "rr_estimator_work")]
    public static Status Work(int estimator, int* more)
    {
        try
        {
            ref int answer = ref Errors.Deref(more, nameof(more));
            answer = Estimators.Get(estimator).Work() ? 1 : 0;
            return Status.Ok;
        }
        catch (Exception exception)
        {
            return Errors.Report(exception);
        }
    }

    [UnmanagedCallersOnly(EntryPoint = "rr_estimator_read")]
    public static Status Read(int estimator, Estimate* estimate)
    {
        try
        {
            ref Estimate answer = ref Errors.Deref(estimate, nameof(estimate));
            Estimators.Get(estimator).Read(out RawEstimate raw);
            answer = new Estimate(raw);
            return Status.Ok;
        }
        catch (Exception exception)
        {
            return Errors.Report(exception);
        }
    }

    [UnmanagedCallersOnly(EntryPoint = "rr_estimator_free")]
    public static Status Free(int estimator)
    {
        try
        {
            Estimators.Remove(estimator);
            return Status.Ok;
        }
        catch (Exception exception)
        {
            return Errors.Report(exception);
        }
    }
}
