// layers times the Clipper 6 library (libpolyclipping) at what
// BenchmarkLayersBesideClipper times here: merge the ink of a name, then
// surround it with round outlines.
//
// Usage: layers FILE RUNS TOLERANCE DISTANCE...
//
// FILE holds rings of grid points: a line with the number of points, then a
// line "x y" for each. TOLERANCE and the distances are in grid units. It prints
// nanoseconds per run, then the area of every outline in square grid units.
#include <chrono>
#include <cstdlib>
#include <fstream>
#include <iomanip>
#include <iostream>
#include <vector>

#include <polyclipping/clipper.hpp>

using namespace ClipperLib;

static Paths read(const char *name) {
    std::ifstream in(name);
    Paths rings;
    std::size_t count;
    while (in >> count) {
        Path ring(count);
        for (IntPoint &p : ring) in >> p.X >> p.Y;
        if (!in) std::exit(2);
        rings.push_back(ring);
    }
    return rings;
}

static std::vector<Paths> outline(const Paths &ink, double tolerance, const std::vector<double> &distances) {
    Clipper merge;
    Paths settled;
    merge.AddPaths(ink, ptSubject, true);
    merge.Execute(ctUnion, settled, pftNonZero, pftNonZero);
    std::vector<Paths> layers(distances.size());
    for (std::size_t i = 0; i < distances.size(); i++) {
        ClipperOffset offset(2, tolerance);
        offset.AddPaths(settled, jtRound, etClosedPolygon);
        offset.Execute(layers[i], distances[i]);
    }
    return layers;
}

int main(int argc, char **argv) {
    if (argc < 5) {
        std::cerr << "usage: layers FILE RUNS TOLERANCE DISTANCE...\n";
        return 2;
    }
    const Paths ink = read(argv[1]);
    const int runs = std::atoi(argv[2]);
    const double tolerance = std::atof(argv[3]);
    std::vector<double> distances;
    for (int i = 4; i < argc; i++) distances.push_back(std::atof(argv[i]));

    std::vector<Paths> layers = outline(ink, tolerance, distances); // warm
    const auto start = std::chrono::steady_clock::now();
    for (int i = 0; i < runs; i++) layers = outline(ink, tolerance, distances);
    const std::chrono::duration<double, std::nano> spent = std::chrono::steady_clock::now() - start;

    std::cout << std::fixed << std::setprecision(1) << spent.count() / runs << '\n';
    for (const Paths &layer : layers) {
        double area = 0;
        for (const Path &ring : layer) area += Area(ring);
        std::cout << area << '\n';
    }
}
