using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-717, ammonia. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R717
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-717",
        Name = "ammonia",
        CasNumber = "7664-41-7",
        Source = "K. Gao and J. Wu and I. H. Bell and E. W. Lemmon, (2020), Thermodynamic Properties of Ammonia for "
            + "Temperatures from the Melting Line to 725 K and Pressures to 1000 MPa, J. Phys. Chem. Ref. Data",
        MolarMass = 0.01703052,
        GasConstant = 8.3144598,
        ReducingTemperature = 405.56,
        ReducingMolarDensity = 13696,
        CriticalTemperature = 405.56,
        CriticalPressure = 11363391.162815327,
        CriticalMolarDensity = 13696,
        AcentricFactor = 0.2556905229865023,
        MinimumTemperature = 195.49,
        MaximumTemperature = 725,
        MaximumPressure = 1000000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 2.224, 4.0585856593352405 },
                { 3.148, 9.776605187888352 },
                { 0.9579, 17.829667620080876 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.006132232, 4, 1, 0 },
                { 1.7395866, 1, 0.382, 0 },
                { -2.2261792, 1, 1, 0 },
                { -0.30127553, 2, 1, 0 },
                { 0.08967023, 3, 0.677, 0 },
                { -0.076387037, 3, 2.915, 2 },
                { -0.84063963, 2, 3.51, 2 },
                { -0.27026327, 3, 1.063, 1 },
            },
            Gaussian = new double[,]
            {
                { 6.212578, 1, 0.655, 0.42776, 1.708, 1.036, -0.0726 },
                { -5.7844357, 1, 1.3, 0.6424, 1.4865, 1.2777, -0.1274 },
                { 2.4817542, 1, 3.1, 0.8175, 2.0915, 1.083, 0.7527 },
                { -2.3739168, 2, 1.4395, 0.7995, 2.43, 1.2906, 0.57 },
                { 0.01493697, 2, 1.623, 0.91, 0.488, 0.928, 2.2 },
                { -3.7749264, 1, 0.643, 0.3574, 1.1, 0.934, -0.243 },
                { 0.0006254348, 3, 1.13, 1.21, 0.85, 0.919, 2.96 },
                { -1.7359E-05, 3, 4.5, 4.14, 1.14, 1.852, 3.02 },
                { -0.13462033, 1, 1, 22.56, 945.64, 1.05897, 0.9574 },
                { 0.07749072839, 1, 4, 22.68, 993.85, 1.05277, 0.9576 },
            },
            GaoB = new double[,]
            {
                { -1.6909858, 1, 4.3315, -2.8452, 0.3696, 1.108, 0.4478, 1.244 },
                { 0.93739074, 1, 4.015, -2.8342, 0.2962, 1.313, 0.44689, 0.6826 },
            },
        },
        SaturationViscosity = new double[,]
        {
            { 201, 0.00049941, 6.9769E-06 },
            { 218.49, 0.00035465, 7.4427E-06 },
            { 235.98, 0.00026884, 7.9411E-06 },
            { 253.47, 0.00021323, 8.4591E-06 },
            { 270.96, 0.00017425, 8.9889E-06 },
            { 288.45, 0.00014514, 9.5288E-06 },
            { 305.94, 0.00012227, 1.0086E-05 },
            { 323.43, 0.00010358, 1.0684E-05 },
            { 340.92, 8.7796E-05, 1.137E-05 },
            { 358.41, 7.4001E-05, 1.225E-05 },
            { 375.9, 6.1305E-05, 1.3582E-05 },
            { 393.39, 4.807E-05, 1.6259E-05 },
        },
    };
}
