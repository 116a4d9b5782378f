export * from "slabwright";
